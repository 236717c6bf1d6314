package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import slabfield.field.Result;
import slabfield.figure.Bounds;

/** The few numbers to look at first. */
public final class Headline {
    /** What a number means for the job. */
    public enum Tone {
        MEETS,
        MISSES,
        PLAIN
    }

    /**
     * One number.
     *
     * @param title what it is
     * @param value with its unit
     * @param detail where it holds or what it rests on
     */
    public record Fact(String title, String value, String detail, Tone tone) {}

    private Headline() {}

    /** The numbers of a prediction in the units chosen. */
    public static List<Fact> of(Result.Solved solved, Units units) {
        List<Fact> facts = new ArrayList<>(coverage(solved, units));
        Result.Flows flows = solved.flows();
        facts.add(new Fact("Exhaust", units.flow(flows.exhaust()), "drawn by " + suctions(solved), Tone.PLAIN));
        flows.roomShare()
                .ifPresent(share -> facts.add(new Fact(
                        "Room air in the exhaust",
                        Words.percent(share),
                        units.flow(flows.fromRoom()) + " of conditioned air",
                        Tone.PLAIN)));
        for (Result.Suction s : solved.suctions())
            facts.add(new Fact(
                    solved.scenario()
                                    .suctionPoint(s.id())
                                    .filter(p -> p.tile().isPresent())
                                    .isPresent()
                            ? "Tile at " + s.id()
                            : "Pit " + s.id(),
                    units.pressure(s.pressure()),
                    units.flow(s.flow()) + " drawn",
                    Tone.PLAIN));
        return facts;
    }

    private static List<Fact> coverage(Result.Solved solved, Units units) {
        Result.Coverage c = solved.coverage();
        Tone weak = c.weakest() >= c.target() ? Tone.MEETS : Tone.MISSES;
        List<Fact> facts = new ArrayList<>();
        if (Double.isNaN(c.weakest()))
            facts.add(new Fact("Weakest place", "none", "no part of the layer has a pressure", Tone.MISSES));
        else {
            String where = (weak == Tone.MEETS ? "meets the target, " : "misses the target, ")
                    + Words.part(Bounds.of(solved.scenario()), c.weakestAt()) + ", " + units.about(c.weakestAt());
            facts.add(new Fact("Weakest place", units.pressure(-c.weakest()), where, weak));
        }
        facts.add(new Fact(
                "Area on target",
                Words.percent(c.meeting()),
                "target " + units.exactPressure(-c.target()) + ", "
                        + solved.scenario().target().choice(),
                c.meeting() >= 1 ? Tone.MEETS : Tone.MISSES));
        return facts;
    }

    private static String suctions(Result.Solved solved) {
        return Words.count(solved.suctions().size(), "suction point", "suction points");
    }

    /** The map in words, for those who do not see it. */
    public static String summary(Solving.Picture picture, Units units) {
        String name = picture.result().scenario().name();
        String state = switch (picture.state()) {
            case UP_TO_DATE -> "";
            case SOLVING -> " Out of date: solving.";
            case FAILED -> " Out of date: " + picture.reason();
        };
        if (picture.solved().isEmpty()) return "Plan of " + name + ", without a prediction." + state;
        StringBuilder text = new StringBuilder("Predicted pressure map of " + name + ".");
        for (Fact f : of(picture.solved().get(), units))
            text.append(" ")
                    .append(f.title())
                    .append(": ")
                    .append(f.value())
                    .append(", ")
                    .append(f.detail())
                    .append(".");
        return text + state;
    }
}
