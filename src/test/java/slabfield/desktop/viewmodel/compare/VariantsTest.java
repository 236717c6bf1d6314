package slabfield.desktop.viewmodel.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.desktop.viewmodel.Bench;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.io.VariantsFile;
import slabfield.model.SealState;

class VariantsTest {
    @TempDir
    Path folder;

    private final List<Workbench.Trouble> troubles = new ArrayList<>();
    private final Workbench bench = Bench.workbench(Bench.house());
    private final Variants variants = new Variants(bench.document(), troubles::add);

    private SealState sump(int row) {
        return variants.rows()
                .get(row)
                .scenario()
                .opening("sump")
                .orElseThrow()
                .seal()
                .state();
    }

    @Test
    void aBranchIsAHouseOfItsOwn() {
        assertThat(variants.rows()).extracting(Variants.Row::name).containsExactly(Variants.FIRST);
        variants.branch("sealed");
        bench.seal("sump", SealState.SEALED);
        assertThat(variants.rows()).extracting(Variants.Row::name).containsExactly(Variants.FIRST, "sealed");
        assertThat(variants.rows()).extracting(Variants.Row::depth).containsExactly(0, 1);
        assertThat(sump(0)).isEqualTo(SealState.OPEN);
        assertThat(sump(1)).isEqualTo(SealState.SEALED);
        variants.switchTo(variants.rows().get(0).id());
        assertThat(bench.document()
                        .scenario()
                        .get()
                        .opening("sump")
                        .orElseThrow()
                        .seal()
                        .state())
                .isEqualTo(SealState.OPEN);
        assertThat(sump(1)).isEqualTo(SealState.SEALED);
    }

    @Test
    void eachVariantHasItsOwnUndo() {
        bench.seal("sump", SealState.LOOSE);
        variants.branch("other");
        assertThat(bench.document().undoLabel().get()).isEmpty();
        bench.seal("sump", SealState.SEALED);
        variants.switchTo(variants.rows().get(0).id());
        bench.document().undo();
        assertThat(sump(0)).isEqualTo(SealState.OPEN);
        variants.switchTo(variants.rows().get(1).id());
        assertThat(sump(1)).isEqualTo(SealState.SEALED);
        bench.document().undo();
        assertThat(sump(1)).isEqualTo(SealState.LOOSE);
        assertThat(sump(0)).isEqualTo(SealState.OPEN);
    }

    @Test
    void namesAreUniqueAndTheOneShownStays() {
        variants.branch("b");
        variants.branch("b");
        variants.rename(variants.rows().get(0).id(), "b");
        assertThat(variants.rows()).extracting(Variants.Row::name).containsExactly("b 3", "b", "b 2");
        int shown = variants.current().get();
        variants.delete(shown);
        assertThat(variants.rows()).hasSize(3);
        variants.delete(variants.rows().get(1).id());
        assertThat(variants.rows())
                .extracting(Variants.Row::depth)
                .as("the child goes up")
                .containsExactly(0, 1);
        assertThat(variants.current().get()).isEqualTo(shown);
    }

    @Test
    void theyAreSavedBesideTheFileAndComeBack() {
        Path file = folder.resolve("house.json");
        variants.branch("sealed");
        assertThat(bench.document().dirty().get()).isTrue();
        bench.seal("sump", SealState.SEALED);
        variants.switchTo(variants.rows().get(0).id());
        assertThat(bench.save(file)).isTrue();
        assertThat(bench.document().dirty().get()).isFalse();
        variants.switchTo(variants.rows().get(1).id());
        assertThat(bench.document().dirty().get())
                .as("the file holds another variant")
                .isTrue();

        Workbench again = Bench.workbench(Bench.house());
        Variants read = new Variants(again.document(), troubles::add);
        again.open(file);
        assertThat(troubles).isEmpty();
        assertThat(read.rows()).extracting(Variants.Row::name).containsExactly(Variants.FIRST, "sealed");
        assertThat(read.rows()).extracting(Variants.Row::current).containsExactly(true, false);
        assertThat(read.rows().get(1).scenario())
                .isEqualTo(variants.rows().get(1).scenario());
        assertThat(again.document().dirty().get()).isFalse();
        read.switchTo(read.rows().get(1).id());
        assertThat(again.document().dirty().get())
                .as("the file holds the first variant")
                .isTrue();
    }

    @Test
    void aHouseWithoutVariantsHasNoSecondFile() {
        Path file = folder.resolve("plain.json");
        bench.save(file);
        assertThat(VariantsFile.beside(file)).doesNotExist();
    }

    @Test
    void aBrokenFileOfVariantsIsToldAndLeavesTheHouse() throws IOException {
        Path file = folder.resolve("house.json");
        bench.save(file);
        Files.writeString(
                VariantsFile.beside(file), "{ \"slabfieldVariants\": 1, \"current\": \"x\", \"variants\": [] }");
        bench.open(file);
        assertThat(troubles)
                .singleElement()
                .satisfies(t -> assertThat(t.text()).contains("\"current\" names no variant"));
        assertThat(variants.rows()).hasSize(1);
    }
}
