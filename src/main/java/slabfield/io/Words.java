package slabfield.io;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import slabfield.model.FanOffer;
import slabfield.model.FillWord;
import slabfield.model.NominalPipe;
import slabfield.model.OpeningKind;
import slabfield.model.SealState;
import slabfield.model.StageKind;
import slabfield.quantity.Dimension;
import slabfield.quantity.Unit;

/** The words that a scenario file may use, in the order in which they are offered. */
final class Words {
    static final Map<String, FillWord> FILLS = fills();
    static final Map<String, SealState> STATES = map(SealState.values(), SealState::word);
    static final Map<String, OpeningKind> OPENINGS = map(OpeningKind.values(), OpeningKind::word);
    static final Map<String, StageKind> STAGES = map(StageKind.values(), StageKind::words);
    static final Map<String, Boolean> CERTAINTIES = Map.of("known", true, "suspected", false);
    static final Map<String, Boolean> POSITIONS = Map.of("centre line", false, "traverse", true);
    static final Map<String, Boolean> WHEN_OFF = Map.of("shut", false, "open", true);

    static final Map<String, NominalPipe> PIPES = map(NominalPipe.values(), NominalPipe::word);
    static final Map<String, FanOffer.Arrangement> ARRANGEMENTS =
            map(FanOffer.Arrangement.values(), FanOffer.Arrangement::words);

    private Words() {}

    static Map<String, Unit> units(Dimension dimension) {
        return map(Unit.of(dimension).toArray(Unit[]::new), Unit::symbol);
    }

    private static Map<String, FillWord> fills() {
        Map<String, FillWord> fills = map(FillWord.values(), FillWord::words);
        fills.remove(FillWord.MEASURED.words());
        return fills;
    }

    private static <T> Map<String, T> map(T[] values, Function<T, String> word) {
        Map<String, T> map = new LinkedHashMap<>();
        for (T value : values) map.put(word.apply(value), value);
        return map;
    }
}
