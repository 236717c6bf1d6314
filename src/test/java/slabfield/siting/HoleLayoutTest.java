package slabfield.siting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.advice.Basements;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;
import slabfield.model.TestHole;
import slabfield.siting.HoleLayout.Rule;

/** A slab of 10 by 8 with its suction at (2, 4). */
class HoleLayoutTest {
    private static Scenario with(Scenario house, double... xy) {
        List<TestHole> holes = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) holes.add(new TestHole("H" + i, new Point(xy[i], xy[i + 1]), ""));
        return house.withTestHoles(holes);
    }

    private static List<Rule> lacking(Scenario house) {
        return HoleLayout.check(house).stream().map(HoleLayout.Shortfall::rule).toList();
    }

    @Test
    void aGoodSetLacksNothing() {
        assertThat(HoleLayout.check(with(Basements.plain(), 3, 3, 1, 7, 9, 1, 9.5, 7.5)))
                .isEmpty();
    }

    @Test
    void withoutHolesEveryRuleIsBroken() {
        assertThat(lacking(with(Basements.plain())))
                .contains(
                        Rule.THREE_HOLES,
                        Rule.EACH_SECTION,
                        Rule.EACH_QUADRANT,
                        Rule.MOST_DISTANT,
                        Rule.NEAR_THE_SUCTION);
    }

    /** Each row leaves out one thing of a good set. */
    @ParameterizedTest
    @CsvSource({
        "'3,3, 9.5,7.5', THREE_HOLES",
        "'3,3, 1,7, 9.5,7.5', EACH_QUADRANT",
        "'3,3, 1,7, 6,1, 6,6', MOST_DISTANT",
        "'0.5,0.5, 0.5,7.7, 9,1, 9.5,7.5', NEAR_THE_SUCTION"
    })
    void whatIsLackingIsNamed(String holes, Rule rule) {
        double[] xy = java.util.Arrays.stream(holes.split(","))
                .mapToDouble(Double::parseDouble)
                .toArray();
        assertThat(lacking(with(Basements.plain(), xy))).contains(rule);
    }

    /** A footing makes two sections of the slab, and both want a hole; so does each side of one that ends in the slab. */
    @Test
    void aHoleIsWantedAcrossEveryFooting() {
        Scenario across = Basements.plain().withBarriers(List.of(Basements.footing(7, false)));
        assertThat(lacking(with(across, 3, 3, 1, 7, 6, 1, 6, 7))).contains(Rule.EACH_SECTION, Rule.ACROSS_FOOTINGS);
        assertThat(HoleLayout.check(with(across, 3, 3, 1, 7, 9, 1, 9.5, 7.5))).isEmpty();
        assertThat(HoleLayout.check(with(across, 3, 3, 1, 7, 6, 1, 6, 7)))
                .filteredOn(s -> s.rule() == Rule.ACROSS_FOOTINGS)
                .singleElement()
                .matches(s -> s.around().orElseThrow().x() > 7 && s.words().contains("\"footing\""));
    }

    /** A small landing of less than 64 ft2 wants none, a second room does. */
    @Test
    void onlyLargeSectionsWantAHole() {
        Slab small = new Slab("landing", Basements.rectangle(10, 0, 12, 2.9), List.of(), 0.1, false);
        Slab large = new Slab("room", Basements.rectangle(10, 0, 12, 3.1), List.of(), 0.1, false);
        Scenario house = with(Basements.plain(), 3, 3, 1, 7, 9.6, 1, 9.8, 7.8);
        List<Slab> drawn = house.slabs();
        assertThat(lacking(house.withSlabs(List.of(drawn.get(0), small)))).doesNotContain(Rule.EACH_SECTION);
        assertThat(HoleLayout.check(house.withSlabs(List.of(drawn.get(0), large))))
                .anyMatch(s -> s.rule() == Rule.EACH_SECTION && s.words().contains("\"room\""));
    }
}
