package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import slabfield.field.Convergence;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.Target;
import slabfield.network.SlabSolver;
import slabfield.network.SlabSolver.Extent;

class SolvingTest {
    private final Document document = new Document(Bench.house());
    private final Bench.Held held = new Bench.Held();
    private final List<Extent> extents = new ArrayList<>();
    private final List<Scenario> asked = new ArrayList<>();
    private Runnable whileSolving = () -> {};
    private final Solving solving = new Solving(
            document,
            (s, extent, progress) -> {
                extents.add(extent);
                asked.add(s);
                Runnable meanwhile = whileSolving;
                whileSolving = () -> {};
                meanwhile.run();
                return s.target().vacuum() == 99
                        ? new Result.Unsolved(
                                s, new Convergence(Convergence.Ending.STALLED, 1, 1, 1), "it did not settle")
                        : SlabSolver.solve(s, extent, progress);
            },
            held);

    @BeforeEach
    void firstPrediction() {
        solving.start();
        held.finishOne();
    }

    private void target(double vacuum) {
        document.edit(Edit.of("target", s -> s.withTarget(new Target(vacuum, "test"))));
    }

    private Solving.Picture picture() {
        return solving.picture().get();
    }

    private double shownTarget() {
        return picture().result().scenario().target().vacuum();
    }

    @Test
    void theFirstPictureIsThePlanAndThenThePrediction() {
        Solving fresh = new Solving(document, SlabSolver::solve, new Bench.Held());
        assertThat(fresh.picture().get().result()).isInstanceOf(Result.Unsolved.class);
        assertThat(picture().state()).isEqualTo(Solving.State.UP_TO_DATE);
        assertThat(picture().current()).isPresent();
        assertThat(extents).containsExactly(Extent.FULL);
    }

    @Test
    void anAnswerThatIsKnownAlreadyIsShownAtOnceButNotThatOfAnotherHouse() {
        Result known = SlabSolver.solve(document.scenario().get(), Progress.NONE);
        Solving fresh = new Solving(document, SlabSolver::solve, new Bench.Held());
        fresh.start(known);
        assertThat(fresh.picture().get().result()).isSameAs(known);
        assertThat(fresh.picture().get().current()).isPresent();
        Solving other = new Solving(new Document(Bench.house()), SlabSolver::solve, new Bench.Held());
        other.start(known);
        assertThat(other.picture().get().state()).isEqualTo(Solving.State.SOLVING);
        assertThat(other.picture().get().solved()).isEmpty();
    }

    @Test
    void whileSolvingTheOldMapStaysAndIsMarked() {
        target(11);
        assertThat(picture().state()).isEqualTo(Solving.State.SOLVING);
        assertThat(shownTarget()).isEqualTo(5);
        assertThat(picture().solved()).isPresent();
        assertThat(picture().current()).isEmpty();
    }

    @Test
    void aResultThatCameTooLateIsDropped() {
        target(11);
        target(12);
        assertThat(held.cancelled).isEqualTo(2);
        held.finishOne();
        assertThat(shownTarget()).isEqualTo(5);
        assertThat(picture().state()).isEqualTo(Solving.State.SOLVING);
        held.finishOne();
        assertThat(shownTarget()).isEqualTo(12);
        assertThat(picture().state()).isEqualTo(Solving.State.UP_TO_DATE);
    }

    @Test
    void aFailureKeepsTheMapAndGivesTheReason() {
        target(99);
        held.finishOne();
        assertThat(picture().state()).isEqualTo(Solving.State.FAILED);
        assertThat(picture().reason()).isEqualTo("it did not settle");
        assertThat(shownTarget()).isEqualTo(5);
        target(11);
        held.finishOne();
        assertThat(picture().state()).isEqualTo(Solving.State.UP_TO_DATE);
    }

    @Test
    void anUnexpectedFailureIsToldInWords() {
        Solving broken = new Solving(
                document,
                (s, e, p) -> {
                    throw new IllegalStateException("pump missing");
                },
                new InLineRunner());
        broken.start();
        assertThat(broken.picture().get().state()).isEqualTo(Solving.State.FAILED);
        assertThat(broken.picture().get().reason()).contains("pump missing").doesNotContain("Exception");
    }

    @Test
    void aDragIsFollowedOnACoarseGridAndEndsWithTheWholeSolve() {
        solving.dragging().set(true);
        target(11);
        target(12);
        target(13);
        assertThat(held.waiting).as("one at a time").hasSize(1);
        assertThat(picture().current())
                .as("the old map is no longer that of the drawing")
                .isEmpty();
        held.finishOne();
        assertThat(shownTarget()).as("the newest, not those between").isEqualTo(13);
        assertThat(picture().quick()).isTrue();
        assertThat(picture().state()).isEqualTo(Solving.State.UP_TO_DATE);
        assertThat(extents).containsExactly(Extent.FULL, Extent.FAN_ON_ONLY);
        solving.dragging().set(false);
        held.finishOne();
        assertThat(extents).endsWith(Extent.FULL);
        assertThat(picture().quick()).isFalse();
        assertThat(picture().current()).isPresent();
    }

    /** While one place is solved the next waits for its turn already, and the map moves though it is behind. */
    @Test
    void theNextPlaceOfADragWaitsBehindTheOneUnderWay() {
        solving.dragging().set(true);
        target(11);
        whileSolving = () -> {
            target(12);
            target(13);
            assertThat(held.waiting).as("the one behind").hasSize(1);
        };
        held.finishOne();
        assertThat(shownTarget()).isEqualTo(11);
        assertThat(picture().state()).isEqualTo(Solving.State.SOLVING);
        assertThat(picture().quick()).isTrue();
        held.finishOne();
        assertThat(shownTarget()).isEqualTo(13);
        assertThat(held.waiting).isEmpty();
    }

    @Test
    void aPlaceOfADragThatCannotBeIsSaidAndTheNextOneIsSolved() {
        solving.dragging().set(true);
        Scenario house = document.scenario().get();
        document.edit(Edit.of(
                "away", s -> s.withSuctionPoint("S1", p -> p.movedTo(new slabfield.model.Point(50, 50)))));
        held.finishOne();
        assertThat(picture().state()).isEqualTo(Solving.State.FAILED);
        assertThat(solving.problems().get()).isNotEmpty();
        assertThat(picture().solved()).as("the last map stays").isPresent();
        document.edit(Edit.of("back", s -> house));
        held.finishOne();
        assertThat(picture().state()).isEqualTo(Solving.State.UP_TO_DATE);
        assertThat(solving.problems().get()).isEmpty();
    }

    @Test
    void aSecondDragIsFollowedThoughTheFirstEndedBeforeItsTurn() {
        solving.dragging().set(true);
        target(11);
        solving.dragging().set(false);
        held.waiting.removeFirst();
        solving.dragging().set(true);
        target(12);
        while (!held.waiting.isEmpty()) held.finishOne();
        assertThat(shownTarget()).isEqualTo(12);
        assertThat(picture().quick()).isTrue();
    }

    @Test
    void aCoarseResultAfterTheEndOfTheDragIsDropped() {
        solving.dragging().set(true);
        target(11);
        solving.dragging().set(false);
        held.finishOne();
        assertThat(shownTarget()).isEqualTo(5);
        held.finishOne();
        assertThat(shownTarget()).isEqualTo(11);
        assertThat(picture().quick()).isFalse();
    }

    @Test
    void theCoarseGridIsNeverFinerThanTheScenariosOwn() {
        solving.dragging().set(true);
        target(11);
        held.finishOne();
        assertThat(asked.get(1).cellSize()).isEqualTo(0.25);
        assertThat(document.scenario().get().cellSize()).isEqualTo(0.25);
    }

    @Test
    void anotherHouseNeverShowsTheMapOfTheOneBefore() {
        document.open(Bench.house().withTarget(new Target(7, "test")), Optional.empty());
        assertThat(picture().result()).isInstanceOf(Result.Unsolved.class);
        held.finishOne();
        assertThat(shownTarget()).isEqualTo(7);
    }
}
