package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import slabfield.model.OpeningKind;
import slabfield.model.Scenario;
import slabfield.model.SealState;
import slabfield.model.Source;

/**
 * A danger to people or to the job that no calculation takes away.
 *
 * @param title the danger
 * @param text what to do
 * @param because why it concerns this house; empty where it concerns every one
 */
public record Caution(String title, String text, String because) {
    /** To be accepted before the program is used for the first time. */
    public static final Caution LICENCE = always(
            "Law, licence and limits",
            "Many places ask for licensed people, permits and set standards: check yours. This program is an aid and approves no"
                    + " design. It cannot judge combustion safety.");

    /** All cautions, those first that this house calls for. */
    public static List<Caution> of(Scenario scenario) {
        List<Caution> all = new ArrayList<>(forHouse(scenario));
        all.addAll(forEvery());
        all.sort(Comparator.comparing(c -> c.because().isEmpty()));
        return all;
    }

    private static boolean lasting(Source source) {
        return source instanceof Source.Fan || source instanceof Source.Branch;
    }

    private static List<Caution> forHouse(Scenario s) {
        boolean fan = s.suctionPoints().stream().anyMatch(p -> lasting(p.source()));
        boolean drains = !s.drainTiles().isEmpty()
                || s.openings().stream()
                        .anyMatch(o -> o.kind() == OpeningKind.SUMP || o.kind() == OpeningKind.FLOOR_DRAIN);
        boolean test = s.suctionPoints().stream().anyMatch(p -> !lasting(p.source()));
        boolean toSeal = s.openings().stream().anyMatch(o -> o.seal().state() != SealState.SEALED);
        return List.of(
                new Caution(
                        "Backdrafting and carbon monoxide",
                        "Suction and leaks can pull flue gas into the house. Test every fuel-burning appliance and fireplace for"
                                + " backdrafting with all exhaust fans on, before start-up and after. If draft reverses: switch the"
                                + " fan off, ventilate, call a qualified person. A working CO alarm belongs on each floor. This"
                                + " program cannot judge combustion safety.",
                        fan ? "a fan draws" : s.suctionPoints().isEmpty() ? "" : "suction draws air out of the house"),
                new Caution(
                        "Water and drainage",
                        "Keep the drainage working. Where a sump or drain is sealed or tile is used for suction, see that water still"
                                + " has a way out.",
                        drains ? "there is a sump, drain or tile" : ""),
                new Caution(
                        "Sewer gas and traps",
                        "Connect suction to no sewer or septic line. Keep traps wet; use trapped covers.",
                        drains ? "there is a sump, drain or tile" : ""),
                new Caution(
                        "Soil gas in the work room",
                        "Lead the test vacuum's exhaust outdoors, ventilate, limit the time, record workers' exposure to radon.",
                        test ? "a suction point is a test without a fan" : ""),
                new Caution(
                        "Sealants and solvents",
                        "Ventilate, read the data sheets, tell the people who live there.",
                        toSeal ? "there are openings to seal" : ""));
    }

    private static List<Caution> forEvery() {
        return List.of(
                LICENCE,
                always(
                        "Utilities in and under the slab",
                        "Locate power, gas, water, sewer and heating lines before any hole. Drawings may be wrong."),
                always(
                        "Tensioned or structural slabs",
                        "Do not drill or core until an engineer or a scan says it is safe: cutting a tensioned cable can injure and"
                                + " damage. Never core footings, columns or beams."),
                always("Silica dust", "Core wet, or drill with a shroud and a HEPA dust collector. No dry sweeping."),
                always(
                        "Asbestos, lead, mould",
                        "If floor tile, mastic, pipe lagging or paint is suspect: stop and have it tested."),
                always(
                        "Electricity",
                        "Wiring is licensed work: a disconnect in sight of the fan, ground-fault protection for tools, care where the"
                                + " floor is wet."),
                always(
                        "Methane, solvents, fuel smell",
                        "Stop. Explosive or poisonous gas needs specialists, and an ordinary fan can ignite it."),
                always(
                        "Discharge",
                        "Above the roof or as the local rule says, away from openings. No pipe under positive pressure indoors."),
                always("Confined spaces", "A crawl space, pit or well can hold bad air. Follow a procedure."),
                always("Fire separations", "Keep the rating of every wall and floor that a pipe goes through."),
                always(
                        "Radon test",
                        "Only a radon test shows success: at least 24 h after start-up with the house closed 12 h before; again at"
                                + " least every two years and after changes."),
                always(
                        "Limits of the model",
                        "Steady flow in one layer, seen from above. Footings that nobody knows of are not in it. Predicted is not"
                                + " measured."));
    }

    private static Caution always(String title, String text) {
        return new Caution(title, text, "");
    }
}
