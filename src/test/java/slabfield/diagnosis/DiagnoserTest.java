package slabfield.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.fit.HouseFit;
import slabfield.fit.NotFitted;
import slabfield.model.Fill;
import slabfield.model.Scenario;
import slabfield.model.Source;

class DiagnoserTest {
    /** Fill far tighter than drawn, no flow read. */
    private static HiddenCauses.Made made;

    private static Diagnosis diagnosis;

    @BeforeAll
    static void diagnose() throws NotFitted {
        made = HiddenCauses.of(1005, Cause.TIGHT_FILL, false);
        diagnosis = Diagnoser.diagnose(made.drawn(), Progress.NONE);
    }

    @Test
    void probabilitiesAddUpToOneAndFall() {
        List<Diagnosis.Weighed> causes = diagnosis.causes();
        assertThat(causes.stream().mapToDouble(Diagnosis.Weighed::probability).sum())
                .isCloseTo(1, within(1e-9));
        for (int i = 1; i < causes.size(); i++)
            assertThat(causes.get(i).probability())
                    .isLessThanOrEqualTo(causes.get(i - 1).probability());
        assertThat(causes)
                .extracting(Diagnosis.Weighed::cause)
                .doesNotHaveDuplicates()
                .contains(Cause.AS_DRAWN, Cause.LEAK, Cause.TIGHT_FILL);
    }

    /** Half for the house as drawn, the rest evenly by cause, and of a cause by the share of each explanation. */
    @Test
    void beforeAnyReadingEachExplanationHasItsShare() {
        List<Explanation> all = Explanations.of(made.drawn());
        assertThat(all.stream().mapToDouble(e -> Diagnoser.prior(e, all)).sum()).isCloseTo(1, within(1e-12));
        assertThat(Diagnoser.prior(all.get(0), all)).isEqualTo(0.5);
        List<Explanation> leaks =
                all.stream().filter(e -> e.cause() == Cause.LEAK).toList();
        List<Explanation> paths =
                all.stream().filter(e -> e.cause() == Cause.HIDDEN_PATH).toList();
        assertThat(paths).hasSizeGreaterThan(1);
        double ofLeaks =
                leaks.stream().mapToDouble(e -> Diagnoser.prior(e, all)).sum();
        assertThat(paths)
                .allSatisfy(e -> assertThat(Diagnoser.prior(e, all)).isCloseTo(ofLeaks / paths.size(), within(1e-12)));
        Explanation sump = leaks.get(0), beside = leaks.get(leaks.size() - 1);
        assertThat(sump.words()).isEqualTo("\"sump\" leaks far more than drawn");
        int holes = made.drawn().testHoles().size();
        assertThat(Diagnoser.prior(sump, all) / Diagnoser.prior(beside, all)).isCloseTo(0.5 * 4 * holes, within(1e-9));
    }

    @Test
    void aCauseThatTheDrawingDoesNotAllowIsNotWeighed() {
        assertThat(diagnosis.causes()).extracting(Diagnosis.Weighed::cause).doesNotContain(Cause.TILE_CUT);
        Scenario held = made.drawn().withSuctionPoint("S1", s -> s.drawnBy(new Source.Pressure(-100)));
        assertThat(Explanations.of(held)).extracting(Explanation::cause).doesNotContain(Cause.BLOCKED_PIPE);
        assertThat(Explanations.of(made.drawn())).extracting(Explanation::cause).contains(Cause.BLOCKED_PIPE);
    }

    @Test
    void withoutAFlowItIsAskedFor() {
        assertThat(diagnosis.notes()).anyMatch(n -> n.startsWith("No flow was measured"));
        assertThat(diagnosis.next()).isPresent();
        assertThat(diagnosis.answer() == Diagnosis.Answer.TOLD
                        && diagnosis.first().cause() != Cause.TIGHT_FILL)
                .isFalse();
    }

    @Test
    void theReadingThatSpeaksForACauseIsBetterExplainedByIt() {
        for (Diagnosis.Weighed w : diagnosis.causes())
            w.speaks()
                    .ifPresent(s -> assertThat(
                                    Math.abs(s.explained() - s.observation().measured()))
                            .isLessThan(Math.abs(s.drawn() - s.observation().measured())));
    }

    @Test
    void itStopsWhenAsked() {
        assertThatThrownBy(() -> Diagnoser.diagnose(made.drawn(), new Progress() {
                    @Override
                    public boolean isCancelled() {
                        return true;
                    }
                }))
                .isInstanceOf(CancellationException.class);
    }

    /** Counted to the end, never back; every fit is named, the house as drawn first. */
    @Test
    void itTellsHowFarItIs() throws NotFitted {
        List<Integer> done = new ArrayList<>();
        List<Integer> totals = new ArrayList<>();
        List<Integer> numbers = new ArrayList<>();
        List<Integer> of = new ArrayList<>();
        List<Cause> causes = new ArrayList<>();
        Diagnoser.diagnose(made.drawn(), new Diagnoser.Watch() {
            @Override
            public void fitting(int number, int count, Explanation explanation) {
                numbers.add(number);
                of.add(count);
                causes.add(explanation.cause());
            }

            @Override
            public void step(int now, int total, double residual) {
                done.add(now);
                totals.add(total);
            }
        });
        assertThat(totals).containsOnly(totals.get(0));
        assertThat(done).isSorted().doesNotHaveDuplicates().endsWith(totals.get(0));
        assertThat(causes).startsWith(Cause.AS_DRAWN).contains(Cause.LEAK, Cause.TIGHT_FILL);
        assertThat(numbers)
                .containsExactlyElementsOf(
                        IntStream.rangeClosed(1, of.get(0)).boxed().toList());
    }

    /** Asked to stop as one fit ends, it does not say that it begins another, however many are under way. */
    @Test
    void itStopsBetweenTwoExplanations() {
        int after = 3;
        AtomicInteger begun = new AtomicInteger();
        AtomicInteger begunWhenAsked = new AtomicInteger();
        AtomicBoolean asked = new AtomicBoolean();
        assertThatThrownBy(() -> Diagnoser.diagnose(made.drawn(), new Diagnoser.Watch() {
                    @Override
                    public void fitting(int number, int of, Explanation explanation) {
                        begun.set(number);
                    }

                    @Override
                    public void step(int now, int total, double residual) {
                        if (asked.get() || begun.get() < after) return;
                        begunWhenAsked.set(begun.get());
                        asked.set(true);
                    }

                    @Override
                    public boolean isCancelled() {
                        return asked.get();
                    }
                }))
                .isInstanceOf(CancellationException.class);
        assertThat(begun.get()).isGreaterThanOrEqualTo(after).isEqualTo(begunWhenAsked.get());
    }

    @Test
    void withoutReadingsItSaysWhatIsMissing() {
        assertThatThrownBy(() -> Diagnoser.diagnose(made.drawn().withStages(List.of()), Progress.NONE))
                .isInstanceOf(NotFitted.class)
                .hasMessageContaining("too little to fit");
    }

    /** The joint leaks some eight times what is drawn; all leaks at three times read nearly the same. */
    @Test
    void leaksFarBeyondTheDrawnOnesAreSaid() throws NotFitted {
        Diagnosis leaky =
                Diagnoser.diagnose(HiddenCauses.of(1044, Cause.LEAK, true).drawn(), Progress.NONE);
        assertThat(leaky.first().cause()).isEqualTo(Cause.AS_DRAWN);
        assertThat(leaky.notes())
                .anyMatch(n -> n.startsWith("The house as drawn explains the readings only with all leaks together 3.")
                        && n.contains("cover them one at a time"));
        assertThat(diagnosis.notes()).noneMatch(n -> n.startsWith("The house as drawn explains"));
    }

    /** 0.55/sqrt(2e-9) = 12298 1/m by hand (Ward 1964); four times as permeable, half of it. */
    @Test
    void coarseFillDrawnWithoutInertiaIsWeighedWithWards() {
        Fill fill = diagnosis.first().fitted().drawn().layer().fill();
        assertThat(made.drawn().layer().fill().inertial()).isZero();
        assertThat(fill.inertial()).isCloseTo(12298, within(1.0));
        Scenario looser = Changes.fill(diagnosis.first().fitted().drawn(), 4);
        assertThat(looser.layer().fill().inertial()).isCloseTo(6149, within(1.0));
    }

    /** Half the speed law: flow by the root of the pressure. */
    @Test
    void aSlowerFanFollowsTheFanLaws() {
        Source.Fan slow = (Source.Fan) Changes.slower(
                new Source.Fan(new Source.FanCurve(List.of(0.0, 0.1), List.of(400.0, 0.0)), List.of(), 0), 0.25);
        assertThat(slow.curve().rises()).containsExactly(100.0, 0.0);
        assertThat(slow.curve().flows().get(1)).isCloseTo(0.05, within(1e-12));
    }

    @Test
    void theHouseOfAnExplanationIsSound() {
        for (Explanation e : Explanations.of(made.drawn()))
            assertThat(HouseFit.predicted(
                            e.house().withCellSize(0.5),
                            diagnosis.first().fitted().observations()))
                    .as(e.words())
                    .isPresent();
    }

    @Test
    void theChecklistBeginsWithWhatStopsTheWork() {
        List<Checklist> rows = Checklist.all();
        assertThat(rows.get(0).stop()).isTrue();
        assertThat(rows.stream().map(Checklist::pattern).collect(Collectors.toSet()))
                .hasSameSizeAs(rows);
        assertThat(rows)
                .allSatisfy(r -> assertThat(List.of(r.pattern(), r.cause(), r.check(), r.reason()))
                        .allSatisfy(words -> assertThat(words).endsWith(".")));
    }
}
