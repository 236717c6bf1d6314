package slabfield.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import slabfield.figure.MapStyle;
import slabfield.model.Fill;
import slabfield.model.Scenario;
import slabfield.model.Zone;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobField;
import slabfield.safety.JobRecord;

/** Parts that several documents share. */
final class Parts {
    static final String NOT_SAID = "not filled in";
    static final String UNANSWERED = "UNANSWERED";
    static final String RETEST =
            "Only a radon test shows whether the system works. Set one out no sooner than 24 hours after the fan was"
                    + " started, with the house kept closed from 12 hours before it; then again at least every two years, and after"
                    + " renovation or a change of heating or of the system.";

    private Parts() {}

    static MapStyle look(Numbers numbers) {
        return MapStyle.of(numbers.forFigures());
    }

    /** Fields of one part of the job; what was not said is shown as that. */
    static Block.Fields details(JobRecord record, JobField.Part part) {
        return new Block.Fields(Arrays.stream(JobField.values())
                .filter(f -> f.part() == part)
                .map(f -> new Block.Field(f.label(), record.detail(f).orElse(NOT_SAID)))
                .toList());
    }

    static String target(Scenario scenario, Numbers numbers) {
        return numbers.given(scenario.target().vacuum()) + " of vacuum ("
                + scenario.target().choice() + ")";
    }

    /** What was assumed, so that the prediction can be judged. */
    static List<Block> assumptions(Job job, Numbers numbers) {
        Scenario s = job.scenario();
        List<Block.Field> fields = new ArrayList<>();
        fields.add(new Block.Field("Fill", fill(s.layer().fill(), numbers)));
        for (Zone zone : s.layer().zones())
            fields.add(new Block.Field("Fill of \"" + zone.id() + "\"", fill(zone.fill(), numbers)));
        fields.add(new Block.Field(
                "Leak through native soil",
                s.soilLeakance() == 0 ? "none assumed" : numbers.scientific(s.soilLeakance(), 2) + " m/(s Pa)"));
        fields.add(new Block.Field("Outdoors against the room", numbers.pressureText(s.outdoorPressure())));
        fields.add(new Block.Field(
                "Air",
                s.air().temperature().isPresent() || s.air().altitude().isPresent()
                        ? numbers.temperature(s.air().temperature().orElse(293.15)) + ", "
                                + numbers.tape(s.air().altitude().orElse(0)) + " above the sea"
                        : "20 °C at sea level"));
        boolean words = s.openings().stream().anyMatch(o -> o.seal().assumed())
                || s.blockWalls().stream().anyMatch(w -> w.tops().assumed());
        if (words)
            fields.add(new Block.Field(
                    "Closing of openings",
                    "where only a word is given: loose takes away 50 %, covered 90 %, sealed 98 %"));
        List<Block> out = new ArrayList<>(List.of(new Block.Heading(1, "Assumptions"), new Block.Fields(fields)));
        if (!job.result().doubts().isEmpty()) {
            out.add(Block.text("Where the answer rests on more than the model can bear:"));
            out.add(new Block.Bullets(job.result().doubts()));
        }
        return out;
    }

    private static String fill(Fill fill, Numbers numbers) {
        return fill.word().words() + ", " + numbers.pipe(fill.thickness()) + " thick, permeability "
                + numbers.scientific(fill.permeability(), 2) + " m2"
                + (fill.assumed()
                        ? " (assumed from the word; real fills of one name differ by ten times and more)"
                        : " (given)");
    }

    /** Model, grid, input: what somebody needs to find the same numbers again. */
    static List<Block> model(Job job, Numbers numbers) {
        var grid = job.result().field().grid();
        var c = job.result().convergence();
        String hash = job.provenance().inputHash();
        return List.of(
                new Block.Heading(1, "Model and limits"),
                new Block.Fields(List.of(
                        new Block.Field(
                                "Program", "Slabfield " + job.provenance().version()),
                        new Block.Field("Input, SHA-256", hash.substring(0, 32) + " " + hash.substring(32)),
                        new Block.Field(
                                "Grid",
                                grid.columns() + " by " + grid.rows() + " cells of " + numbers.pipe(grid.width())
                                        + " by " + numbers.pipe(grid.height())),
                        new Block.Field(
                                "Solve",
                                "converged in " + c.iterations() + " steps; air in and out differ by "
                                        + numbers.scientific(Math.abs(c.massBalance()), 0) + " of the flow"))),
                new Block.Bullets(
                        List.of(
                                "Steady flow in one layer, seen from above. Gusts, and how long the field takes to settle, are not in it.",
                                "A footing, an opening or a pipe trench that nobody drew is not there.",
                                "Radon is not predicted. Good vacuum everywhere can go with high radon.",
                                "The program cannot judge combustion safety and approves no design.",
                                "Its equations are checked against exact and published solutions, not against readings from real houses.")));
    }

    /** Gates that must be answered, with their answers. */
    static List<Block> gates(JobRecord record) {
        List<List<String>> rows = new ArrayList<>();
        for (Gate gate : Gate.values()) {
            if (!gate.mustBeAnswered()) continue;
            Optional<GateAnswer> given = record.answer(gate);
            rows.add(List.of(
                    gate.word(),
                    given.map(a -> a.answer().word()).orElse(UNANSWERED),
                    gate.question(),
                    given.map(a -> (a.by() + " " + a.time() + " " + a.note()).strip())
                            .orElse(Numbers.NONE)));
        }
        return List.of(
                new Block.Heading(1, "Safety questions"),
                new Block.Table(
                        "",
                        List.of("question", "answer", "\"yes\" affirms", "by, when, note"),
                        List.of(1.1, 1.15, 3.3, 1.5),
                        List.of(false, false, false, false),
                        rows));
    }

    /** Cautions that stand on every record. */
    static List<Block> cautions() {
        List<String> items = new ArrayList<>();
        items.add(
                "Backdrafting and carbon monoxide: suction and leaks can pull flue gas into the house. Test for backdrafting with all"
                        + " exhausts on, before start-up and after. If draft reverses: fan off, air the house, get a qualified person.");
        items.add("Utilities: locate them before drilling or coring; drawings may be wrong.");
        items.add(
                "Tensioned or structural slabs: no drilling or coring until a scan or an engineer has cleared the place. Never core footings, columns or beams.");
        for (Gate gate : Gate.values())
            if (!gate.mustBeAnswered()) items.add(capital(gate.word()) + ": " + gate.question());
        items.add("Law: many places ask for licensed people, permits and set standards. Check yours.");
        return List.of(new Block.Heading(1, "Cautions"), new Block.Bullets(items));
    }

    static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** Two-column rows of a map. */
    static Block.Fields fields(Map<String, String> pairs) {
        return new Block.Fields(pairs.entrySet().stream()
                .map(e -> new Block.Field(e.getKey(), e.getValue()))
                .toList());
    }
}
