package slabfield.desktop.viewmodel.guide;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.compare.Options;
import slabfield.desktop.viewmodel.compare.Variants;
import slabfield.desktop.viewmodel.find.Findings;
import slabfield.desktop.viewmodel.find.Picture;
import slabfield.desktop.viewmodel.lesson.Course;
import slabfield.desktop.viewmodel.lesson.Lessons;
import slabfield.desktop.viewmodel.lesson.Practice;
import slabfield.desktop.viewmodel.lesson.ScoreBook;
import slabfield.desktop.viewmodel.see.Sight;
import slabfield.desktop.viewmodel.work.JobStages;
import slabfield.desktop.viewmodel.work.Previews;
import slabfield.desktop.viewmodel.work.ReadingEntry;
import slabfield.io.ExampleScenarios;
import slabfield.network.AirTracing;
import slabfield.network.SolveSession;

/** What helps to see, to compare, to work through a job and to learn, around one workbench. */
public final class Guide {
    /** What the window is about. */
    public enum Mode {
        HOUSE("House"),
        COMPARE("Compare"),
        READINGS("Readings"),
        FINDINGS("Findings"),
        LEARN("Learn");

        private final String words;

        Mode(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * Where work is done, each kind one after the other.
     *
     * @param traces of the air
     * @param options of variants and measures
     * @param lessons of lessons' houses
     * @param finds of what readings tell
     */
    public record Runners(TaskRunner traces, TaskRunner options, TaskRunner lessons, TaskRunner finds) {}

    private static final String PRACTICE_HOUSE = "far-sump.json";

    private final ObjectProperty<Mode> mode = new SimpleObjectProperty<>(Mode.HOUSE);
    private final Workbench bench;
    private final Sight sight;
    private final Variants variants;
    private final Options options;
    private final JobStages stages;
    private final ReadingEntry entry;
    private final Previews previews;
    private final Course course;
    private final Practice practice;
    private final Findings findings;

    public Guide(Workbench bench, ScoreBook scores, Runners runners) {
        this.bench = bench;
        sight = new Sight(bench, AirTracing::of, runners.traces());
        variants = new Variants(bench.document(), t -> bench.trouble().set(Optional.of(t)));
        options = new Options(variants, bench.units(), inSession(), runners.options());
        stages = new JobStages(bench, LocalDateTime::now);
        entry = new ReadingEntry(bench, LocalDateTime::now);
        previews = new Previews(bench.document(), inSession(), runners.options());
        course = new Course(
                Lessons.all(), ExampleScenarios::lesson, bench.units(), scores, inSession(), runners.lessons());
        practice = new Practice(
                ExampleScenarios.lesson(PRACTICE_HOUSE).withName("Practice house"),
                bench.units(),
                scores,
                inSession(),
                runners.lessons(),
                new Random());
        findings = new Findings(bench, inSession(), runners.finds(), runners.options());
        findings.layer()
                .addListener((o, was, is) ->
                        sight.finding().set(is.map(Picture.Plan::layers).orElse(List.of())));
        mode.addListener((o, was, is) -> {
            findings.watched().set(is == Mode.FINDINGS);
            options.watched().set(is == Mode.COMPARE);
            if (is == Mode.LEARN && course.solved().get().isEmpty()) course.begin();
        });
    }

    private static Solving.Solver inSession() {
        SolveSession session = new SolveSession();
        return session::solve;
    }

    public ObjectProperty<Mode> mode() {
        return mode;
    }

    public Workbench bench() {
        return bench;
    }

    public Sight sight() {
        return sight;
    }

    public Variants variants() {
        return variants;
    }

    public Options options() {
        return options;
    }

    public JobStages stages() {
        return stages;
    }

    public ReadingEntry entry() {
        return entry;
    }

    public Previews previews() {
        return previews;
    }

    public Findings findings() {
        return findings;
    }

    public Course course() {
        return course;
    }

    public Practice practice() {
        return practice;
    }
}
