package slabfield.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.model.House;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.quantity.Unit;
import slabfield.safety.Answer;
import slabfield.safety.Gate;
import slabfield.safety.JobField;
import slabfield.safety.JobRecord;

/** One page in plain words: what was done, is it working, what it costs, is it looked after, when to test. */
final class HouseholderSheet {
    private final Job job;
    private final JobRecord record;
    private final Numbers n;

    HouseholderSheet(Job job, Numbers numbers) {
        this.job = job;
        this.record = job.record();
        this.n = numbers;
    }

    List<Block> blocks() {
        List<Block> out = new ArrayList<>();
        out.add(new Block.Title(
                "Your radon system",
                record.detail(JobField.HOUSE).orElse(job.scenario().name())));
        part(out, "What was done", done());
        part(out, "Is it working?", working());
        part(out, "When do I test for radon?", testing());
        part(out, "What about flue gas and carbon monoxide?", safety());
        part(out, "What does it cost?", cost());
        part(
                out,
                "Whom do I call?",
                record.detail(JobField.CALL)
                                .map(c -> c + ".")
                                .orElse("Nobody is named yet: ask your contractor to fill this in.")
                        + " Keep this page with the house, and hand it to the next owner.");
        return out;
    }

    private static void part(List<Block> out, String heading, String text) {
        out.add(new Block.Heading(1, heading));
        out.add(new Block.Large(text));
    }

    private String done() {
        int points = job.scenario().suctionPoints().size();
        String pipes = points == 1 ? "a pipe draws air from one place" : "pipes draw air from " + points + " places";
        return "Below your floor slab " + pipes
                + " and a fan blows it outdoors, so that soil air is pulled away before it comes into the"
                + " house. "
                + record.detail(JobField.DISCHARGE_AT)
                        .map(d -> "It leaves here: " + d + ". ")
                        .orElse("")
                + record.startUp()
                        .map(t -> "The fan was started on " + t.toLocalDate() + ".")
                        .orElse("The fan has not been recorded as started.");
    }

    private String working() {
        String mark = record.detail(JobField.MONITOR_MARK)
                .map(m -> "Look at the gauge on the pipe ("
                        + record.detail(JobField.MONITOR).orElse("place not filled in")
                        + "): at start-up it was marked at " + m + ".")
                .orElse("The mark on the gauge has not been filled in: ask your contractor for it.");
        String moved = " If it has moved much or stands at zero: "
                + record.detail(JobField.OUT_OF_RANGE).orElse("look whether the fan runs, and call the number below")
                + ". Never switch the fan off for good.";
        return mark + moved + measured();
    }

    /** What was measured at start-up in the weakest hole, with a picture of how little a pascal is. */
    private String measured() {
        Optional<Stage> start = StartUpRecord.latest(job, StageKind.START_UP);
        OptionalDouble weakest = start.stream()
                .flatMap(s -> s.holes().stream())
                .filter(r -> r.fanOn().isPresent())
                .mapToDouble(r -> r.fanOn().getAsDouble())
                .max();
        if (weakest.isEmpty()) return "";
        double vacuum = -weakest.getAsDouble();
        if (vacuum <= 0)
            return " Measured on that day: at one test hole there was NO pull under the floor: ask your contractor about it.";
        return " Measured on that day: the pull under the floor was at least " + n.pressureText(vacuum)
                + " at every test hole read; it would lift" + " water in a straw by "
                + n.plain(Unit.INCH_OF_WATER.fromSi(vacuum), 3) + " inches.";
    }

    private String testing() {
        String results = record.radonTests().stream()
                .filter(t -> !t.result().isBlank())
                .map(t -> t.start().toLocalDate() + ": " + t.result())
                .reduce((a, b) -> a + "; " + b)
                .map(r -> "Measured so far: " + r + ". ")
                .orElse("No radon result after start-up is on file yet. ");
        String before = record.detail(JobField.RADON_BEFORE)
                .map(b -> "Measured before the work: " + b + ". ")
                .orElse("");
        return before + results + "Only a radon test shows whether the system works. First test: "
                + record.earliestRadonTest()
                        .map(t -> "not before " + StartUpRecord.MOMENT.format(t))
                        .orElse("not before the fan has run for 24 hours")
                + ", windows and outside doors kept shut from 12 hours before. Then again by "
                + StartUpRecord.again(record) + ".";
    }

    private String safety() {
        String alarm = answer(
                Gate.CO_ALARM,
                "A carbon monoxide alarm works on each floor, as answered on the record.",
                "No working carbon monoxide alarm on each floor: put one up now.");
        String draft = answer(
                Gate.COMBUSTION,
                "The record says that burners and fireplaces were looked for and tested for backdrafting.",
                "Burners and fireplaces were NOT all tested for backdrafting: have it done before you rely on the system.");
        int open = record.openBeforeCompletion().size();
        String failed = open == 0
                ? ""
                : " The record is still OPEN, with " + (open == 1 ? "one thing" : open + " things")
                        + " not done or not answered: ask your contractor which.";
        return draft + " " + alarm + failed
                + " If a flue smells or a burner's flame rolls out: fan off, windows open, everybody out, call for help.";
    }

    private String answer(Gate gate, String yes, String no) {
        Optional<Answer> given = record.answer(gate).map(a -> a.answer());
        if (given.isEmpty())
            return "\"" + Parts.capital(gate.word()) + "\" is UNANSWERED on the record: ask your contractor.";
        return given.get() == Answer.YES
                ? yes
                : given.get() == Answer.NO
                        ? no
                        : "The record says that there is no burner, fireplace or attached garage.";
    }

    private String cost() {
        return job.sizing()
                .flatMap(s -> s.cost().map(c -> {
                    House house = s.scenario().house();
                    if (c.fanEnergy().isEmpty())
                        return "The fan's power is not filled in, so its use of electricity is not known.";
                    String energy = "The fan runs day and night and is estimated to use "
                            + DesignRecord.kilowattHours(n, c.fanEnergy()) + " kWh of electricity a year";
                    String money = house.tariff().isPresent() && c.fanCost().isPresent()
                            ? ", about " + n.plain(c.fanCost(), 0) + " "
                                    + house.tariff().get().currency() + " at the price given."
                            : "; multiply by the price on your bill.";
                    return energy + money + " It also draws some heated air out of the house.";
                }))
                .orElse("Not worked out for this page.");
    }
}
