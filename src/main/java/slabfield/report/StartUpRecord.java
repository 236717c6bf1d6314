package slabfield.report;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;
import slabfield.safety.JobField;
import slabfield.safety.JobRecord;
import slabfield.safety.RadonTest;

/** What was checked and read when the fan was started. Nothing in it is predicted. */
final class StartUpRecord {
    static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

    private final Job job;
    private final JobRecord record;
    private final Numbers n;

    StartUpRecord(Job job, Numbers numbers) {
        this.job = job;
        this.record = job.record();
        this.n = numbers;
    }

    List<Block> blocks() {
        List<Block> out = new ArrayList<>();
        out.add(new Block.Title("Start-up record", job.scenario().name()));
        out.add(Block.text("What people checked, read and answered. Nothing in this record is predicted."));
        open(out);
        out.add(new Block.Heading(1, "House and system"));
        out.add(Parts.details(record, JobField.Part.HOUSE));
        out.add(Parts.details(record, JobField.Part.SYSTEM));
        readings(out);
        drafts(out);
        out.addAll(Parts.gates(record));
        radon(out);
        out.add(new Block.Heading(1, "Care of the system"));
        out.add(Parts.details(record, JobField.Part.HANDOVER));
        out.addAll(Parts.cautions());
        return out;
    }

    private void open(List<Block> out) {
        List<String> open = record.openBeforeCompletion();
        out.add(new Block.Fields(List.of(
                new Block.Field(
                        "Fan started", record.startUp().map(MOMENT::format).orElse("not started")),
                new Block.Field(
                        "Record",
                        record.completed()
                                .map(t -> "marked complete " + MOMENT.format(t))
                                .orElse("OPEN")))));
        if (open.isEmpty()) return;
        out.add(new Block.Notice("This record is not complete. Open:"));
        out.add(new Block.Bullets(open));
    }

    private void readings(List<Block> out) {
        out.add(new Block.Heading(1, "Readings at start-up"));
        Optional<Stage> latest = latest(job, StageKind.START_UP);
        if (latest.isEmpty()) {
            out.add(
                    new Block.Notice(
                            "No readings of a start-up are in the file: suction in the riser and every test hole are still to be read."));
            return;
        }
        Stage stage = latest.get();
        out.add(Block.text("Stage \"" + stage.id() + "\"" + (stage.time().isEmpty() ? "" : ", " + stage.time())
                + "; all values MEASURED."));
        List<List<String>> systems = stage.systems().stream()
                .map(r -> List.of(r.suctionPoint(), n.pressure(r.riser()), n.flow(r.flow())))
                .toList();
        if (!systems.isEmpty())
            out.add(new Block.Table(
                    "Suction points",
                    List.of(
                            "point",
                            "suction in the riser, " + n.pressure().symbol(),
                            "flow, " + n.flow().symbol()),
                    List.of(2.0, 1.5, 1.5),
                    List.of(false, true, true),
                    systems));
        List<List<String>> holes = stage.holes().stream()
                .map(r -> List.of(r.hole(), n.pressure(r.fanOff()), n.pressure(r.fanOn()), against(r.fanOn())))
                .toList();
        if (!holes.isEmpty())
            out.add(new Block.Table(
                    "Test holes, in " + n.pressure().symbol() + "; target " + Parts.target(job.scenario(), n),
                    List.of("hole", "fan off", "fan on", "target"),
                    List.of(2.0, 1.2, 1.2, 1.4),
                    List.of(false, true, true, false),
                    holes));
        List<String> unread = job.scenario().testHoles().stream()
                .map(h -> h.id())
                .filter(id -> stage.holes().stream()
                        .noneMatch(r -> r.hole().equals(id) && r.fanOn().isPresent()))
                .toList();
        if (!unread.isEmpty()) out.add(Block.text("Not read with the fan on: " + String.join(", ", unread) + "."));
    }

    private String against(OptionalDouble on) {
        if (on.isEmpty()) return "not read";
        return -on.getAsDouble() >= job.scenario().target().vacuum() ? "met that day" : "not met";
    }

    static Optional<Stage> latest(Job job, StageKind kind) {
        return job.stages().stream()
                .map(Job.Read::stage)
                .filter(s -> s.kind() == kind)
                .reduce((a, b) -> b);
    }

    private void drafts(List<Block> out) {
        out.add(new Block.Heading(1, "Draft tests under worst-case exhaust"));
        if (record.draftTests().isEmpty()) {
            out.add(new Block.Notice("No draft test is recorded. That says nothing about combustion safety."));
            return;
        }
        List<List<String>> rows = record.draftTests().stream().map(this::draft).toList();
        out.add(new Block.Table(
                "As carried out and judged by a person",
                List.of(
                        "appliance",
                        "radon fan",
                        "outcome",
                        "house, " + n.pressure().symbol(),
                        "draft",
                        "spillage, s",
                        "CO, ppm",
                        "when, by",
                        "open steps"),
                List.of(1.5, 0.9, 0.9, 0.9, 0.8, 0.9, 0.8, 1.9, 0.8),
                List.of(false, false, false, true, true, true, true, false, true),
                rows));
        List<String> steps = new ArrayList<>();
        for (DraftTest t : record.draftTests())
            if (!t.open().isEmpty())
                steps.add(t.appliance() + ", " + MOMENT.format(t.time()) + ", not answered with yes: "
                        + String.join(
                                ", ", t.open().stream().map(DraftStep::word).toList()) + ".");
        if (!steps.isEmpty()) out.add(new Block.Bullets(steps));
    }

    private List<String> draft(DraftTest t) {
        return List.of(
                t.appliance(),
                t.fanRunning() ? "running" : "off",
                t.outcome().word(),
                n.pressure(t.housePressure()),
                n.pressure(t.draft()),
                n.plain(t.spillage(), 0),
                n.plain(t.carbonMonoxide(), 0),
                (MOMENT.format(t.time()) + " " + t.by()).strip(),
                String.valueOf(t.open().size()));
    }

    private void radon(List<Block> out) {
        out.add(new Block.Heading(1, "Radon tests"));
        out.add(Block.text(Parts.RETEST));
        out.add(new Block.Fields(List.of(
                new Block.Field(
                        "Not before",
                        record.earliestRadonTest()
                                .map(MOMENT::format)
                                .orElse("24 h after start-up, which is not recorded")),
                new Block.Field("Again by", again(record)),
                new Block.Field(
                        "Measured before the work",
                        record.detail(JobField.RADON_BEFORE).orElse(Parts.NOT_SAID)))));
        if (record.radonTests().isEmpty()) {
            out.add(new Block.Notice(
                    "No radon test after start-up is recorded. Whether the system lowers radon is not known."));
            return;
        }
        List<List<String>> rows =
                record.radonTests().stream().map(StartUpRecord::radon).toList();
        out.add(new Block.Table(
                "Results as typed in, MEASURED",
                List.of("set out", "result"),
                List.of(1.2, 3.0),
                List.of(false, false),
                rows));
    }

    private static List<String> radon(RadonTest test) {
        return List.of(MOMENT.format(test.start()), test.result().isBlank() ? "no result yet" : test.result());
    }

    /** Two years after the last test, or after start-up where there is none. */
    static String again(JobRecord record) {
        return record.radonTests().stream()
                .map(RadonTest::start)
                .max(LocalDateTime::compareTo)
                .or(record::startUp)
                .map(t -> t.toLocalDate().plusYears(2) + " at the latest, and after changes")
                .orElse("two years after the last test at the latest, and after changes");
    }
}
