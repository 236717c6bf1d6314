package slabfield.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.model.Stage;
import slabfield.readings.Comparison;
import slabfield.safety.JobField;

/** What was read, stage by stage; predictions stand beside it in columns of their own. */
final class TestRecord {
    private final Job job;
    private final Numbers n;

    TestRecord(Job job, Numbers numbers) {
        this.job = job;
        this.n = numbers;
    }

    List<Block> blocks() {
        List<Block> out = new ArrayList<>();
        out.add(new Block.Title("Test record", job.scenario().name()));
        out.add(Block.text(
                "Pressures are relative to the room beside the hole; negative = soil under vacuum. Columns marked MEASURED were"
                        + " read and typed in by people; columns marked PREDICTED come from the model."));
        out.add(new Block.Heading(1, "House, conditions and instruments"));
        out.add(Parts.details(job.record(), JobField.Part.HOUSE));
        out.add(Parts.details(job.record(), JobField.Part.CONDITIONS));
        if (job.stages().isEmpty())
            out.add(new Block.Notice("No readings are in the file. This record is empty until some are typed in."));
        for (Job.Read read : job.stages()) stage(out, read);
        out.addAll(Parts.gates(job.record()));
        out.addAll(Parts.cautions());
        out.addAll(Parts.model(job, n));
        return out;
    }

    private void stage(List<Block> out, Job.Read read) {
        Stage stage = read.stage();
        out.add(new Block.Heading(1, heading(stage)));
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("When", stage.time().isEmpty() ? Parts.NOT_SAID : stage.time());
        facts.put("House", stage.asDrawn() ? "as drawn" : changes(stage));
        if (!stage.notes().isEmpty()) facts.put("Notes", stage.notes());
        out.add(Parts.fields(facts));
        systems(out, read);
        holes(out, read);
        read.comparison()
                .ifPresentOrElse(
                        c -> {
                            Curves.parity(job.scenario().name(), c, Parts.look(n))
                                    .ifPresent(f -> out.add(new Block.Picture(f)));
                            if (c.bias().isPresent())
                                out.add(Block.text("Measured less predicted: on average "
                                        + n.pressureText(c.bias().getAsDouble()) + ", root mean square "
                                        + n.pressureText(c.scatter().getAsDouble()) + "."));
                            if (!c.remarks().isEmpty()) out.add(new Block.Bullets(c.remarks()));
                        },
                        () -> out.add(
                                Block.text(
                                        "The house as it stood in this stage could not be solved; there is no prediction for it.")));
    }

    /** Kind and name of a stage, once where they are the same words. */
    private static String heading(Stage stage) {
        String kind = Parts.capital(stage.kind().words());
        return kind.equalsIgnoreCase(stage.id()) ? kind : kind + ": " + stage.id();
    }

    private static String changes(Stage stage) {
        List<String> words = new ArrayList<>();
        stage.seals().keySet().stream()
                .sorted()
                .forEach(
                        id -> words.add(id + " " + stage.seals().get(id).state().word()));
        stage.sources().keySet().stream().sorted().forEach(id -> words.add(id + " drawn otherwise"));
        return String.join(", ", words);
    }

    private void systems(List<Block> out, Job.Read read) {
        List<List<String>> rows = new ArrayList<>();
        for (Stage.SystemReading r : read.stage().systems()) {
            Optional<Comparison.SystemComparison> c = read.comparison().stream()
                    .flatMap(x -> x.systems().stream())
                    .filter(s -> s.suctionPoint().equals(r.suctionPoint()))
                    .findFirst();
            rows.add(List.of(
                    r.suctionPoint(),
                    n.pressure(r.riser()),
                    n.flow(r.flow()),
                    n.pressure(c.map(Comparison.SystemComparison::predictedPressure)
                            .orElse(Double.NaN)),
                    n.flow(c.map(Comparison.SystemComparison::predictedFlow).orElse(Double.NaN))));
        }
        if (rows.isEmpty()) {
            out.add(
                    Block.text(
                            "No suction or flow was measured at a suction point. Without a flow a leaky slab cannot be told from tight fill."));
            return;
        }
        out.add(new Block.Table(
                "Suction points",
                List.of(
                        "point",
                        "MEASURED suction, " + n.pressure().symbol(),
                        "MEASURED flow, " + n.flow().symbol(),
                        "PREDICTED suction",
                        "PREDICTED flow"),
                List.of(1.4, 1.4, 1.4, 1.2, 1.2),
                List.of(false, true, true, true, true),
                rows));
    }

    private void holes(List<Block> out, Job.Read read) {
        List<List<String>> rows = new ArrayList<>();
        for (Stage.HoleReading r : read.stage().holes()) {
            Optional<Comparison.HoleComparison> c = read.comparison().stream()
                    .flatMap(x -> x.holes().stream())
                    .filter(h -> h.hole().equals(r.hole()))
                    .findFirst();
            OptionalDouble change = r.fanOn().isPresent() && r.fanOff().isPresent()
                    ? OptionalDouble.of(r.fanOn().getAsDouble() - r.fanOff().getAsDouble())
                    : OptionalDouble.empty();
            rows.add(List.of(
                    r.hole(),
                    n.pressure(r.fanOff()),
                    n.pressure(r.fanOn()),
                    n.pressure(change),
                    n.pressure(r.spread()),
                    n.pressure(c.map(Comparison.HoleComparison::predicted).orElse(OptionalDouble.empty())),
                    n.pressure(c.map(Comparison.HoleComparison::band).orElse(Double.NaN)),
                    c.map(x -> x.verdict().words()).orElse(Numbers.NONE)));
        }
        if (rows.isEmpty()) return;
        out.add(new Block.Table(
                "Test holes, in " + n.pressure().symbol(),
                List.of(
                        "hole",
                        "MEASURED fan off",
                        "MEASURED fan on",
                        "on less off",
                        "spread",
                        "PREDICTED fan on",
                        "band ±",
                        "against the prediction"),
                List.of(1.0, 1.15, 1.15, 0.9, 0.8, 1.2, 0.8, 1.8),
                List.of(false, true, true, true, true, true, true, false),
                rows));
    }
}
