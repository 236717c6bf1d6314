package slabfield.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.Paper;
import slabfield.io.InputHash;
import slabfield.io.ScenarioReader;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.network.SlabSolver;
import slabfield.quantity.Unit;
import slabfield.safety.Answer;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobField;
import slabfield.safety.JobRecord;
import slabfield.safety.RadonTest;

/** What reports say, and that other tools can read them. House and people are invented. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReportPdfTest {
    private static final LocalDateTime START = LocalDateTime.of(2026, 1, 21, 15, 0);

    private Result.Solved solved;
    private Job full;
    private Job empty;

    @TempDir
    private Path folder;

    @BeforeAll
    void solve() throws Exception {
        Scenario house = ScenarioReader.read(Path.of("scenarios", "block-walls-before-sealing.json"))
                .withCellSize(0.4);
        solved = (Result.Solved) SlabSolver.solve(house, Progress.NONE);
        JobRecord record = JobRecord.empty(house.name())
                .with(Gate.UTILITIES, new GateAnswer(Answer.YES, "A. B.", START, "marked in red"))
                .started(START)
                .with(new RadonTest(START.plusDays(3), "61 Bq/m3, alpha track"))
                .with(JobField.MONITOR_MARK, "200 Pa")
                .with(JobField.ADDRESS, "12 Invented Lane");
        full = job(record);
        empty = job(JobRecord.empty(house.name()));
    }

    private Job job(JobRecord record) {
        Provenance from = new Provenance("test", InputHash.of(solved.scenario(), record), Optional.empty());
        return Jobs.of(solved, record, from, false, Progress.NONE);
    }

    private static Numbers numbers() {
        return new Numbers(Unit.PASCAL, Unit.LITRE_PER_SECOND, Unit.METRE, Locale.ENGLISH);
    }

    private static byte[] pdf(Job job, ReportKind... kinds) {
        return ReportPdf.bytes(job, List.of(kinds), numbers(), Paper.A4);
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void theDesignSaysThatItIsPredictedAndOnWhatItRests() throws IOException {
        String text = text(pdf(full, ReportKind.DESIGN));
        assertThat(text)
                .contains("Everything in this record is PREDICTED")
                .doesNotContain("MEASURED")
                .doesNotContain("alpha track");
        assertThat(text)
                .contains(full.provenance().inputHash().substring(0, 32))
                .contains("Slabfield test")
                .contains("cells of");
        assertThat(text)
                .contains("Radon is not predicted")
                .contains("cannot judge combustion safety")
                .contains("permeability");
        assertThat(text).contains(numbers().pressure(solved.holes().get(0).fanOn()));
    }

    @Test
    void theTestRecordKeepsMeasuredAndPredictedApart() throws IOException {
        String text = text(pdf(full, ReportKind.TEST));
        assertThat(text)
                .contains("MEASURED fan on")
                .contains("PREDICTED fan on")
                .contains("tops and joint filled");
        full.stages()
                .forEach(read -> read.stage()
                        .holes()
                        .forEach(r -> assertThat(text).contains(numbers().pressure(r.fanOn()))));
        assertThat(text).contains("not filled in");
    }

    @Test
    void theStartUpRecordShowsWhatIsOpenAndRadonOnlyAsTypedIn() throws IOException {
        String text = text(pdf(full, ReportKind.START_UP));
        assertThat(text)
                .contains("not complete")
                .contains("CO alarm UNANSWERED")
                .contains("utilities yes")
                .contains("61 Bq/m3, alpha track");
        assertThat(text)
                .contains("2026-01-22 15:00")
                .contains("2028-01-24")
                .contains("200 Pa")
                .doesNotContain("PREDICTED");
        String blank = text(pdf(empty, ReportKind.START_UP));
        assertThat(blank)
                .contains("No radon test after start-up is recorded")
                .contains("24 h after start-up, which is not recorded");
        for (Gate gate : Gate.values())
            if (gate.mustBeAnswered()) assertThat(blank).contains(gate.word() + " UNANSWERED");
    }

    /** However much was filled in, the householder gets one page. */
    @ParameterizedTest
    @CsvSource({"A4", "LETTER"})
    void theHouseholderGetsOnePage(Paper paper) throws IOException {
        JobRecord said = full.record();
        for (JobField field : JobField.values())
            said = said.with(field, "said of the " + field.word() + ", at some length, with a telephone number");
        Job wordy = new Job(solved, full.stages(), Optional.empty(), said, full.provenance());
        for (Job job : List.of(full, empty, wordy)) {
            byte[] pdf = ReportPdf.bytes(job, List.of(ReportKind.HOUSEHOLDER), numbers(), paper);
            try (PDDocument document = Loader.loadPDF(pdf)) {
                assertThat(document.getNumberOfPages()).isEqualTo(1);
            }
            assertThat(text(pdf))
                    .contains("Only a radon test shows")
                    .doesNotContain("passes")
                    .doesNotContain("radon is safe");
        }
        assertThat(text(pdf(empty, ReportKind.HOUSEHOLDER))).contains("is UNANSWERED on the record");
    }

    /** The page never says more than the record does. */
    @Test
    void theHouseholderIsToldWhatIsOpen() throws IOException {
        Job noAlarm = job(full.record()
                .with(Gate.CO_ALARM, new GateAnswer(Answer.NO, "A. B.", START, ""))
                .with(Gate.COMBUSTION, new GateAnswer(Answer.NOT_PRESENT, "A. B.", START, "")));
        String text = text(pdf(noAlarm, ReportKind.HOUSEHOLDER));
        assertThat(text)
                .contains("No working carbon monoxide alarm")
                .contains("there is no burner, fireplace or attached garage");
        assertThat(text)
                .contains("The record is still OPEN, with "
                        + noAlarm.record().openBeforeCompletion().size() + " things");
        assertThat(text).doesNotContain("safe");
    }

    /** A positive reading in a hole is no pull at all. */
    @Test
    void theHouseholderIsToldOfAHoleWithoutPull() throws IOException {
        assertThat(text(pdf(startUp(-20, 0.3), ReportKind.HOUSEHOLDER)))
                .contains("at one test hole there was NO pull")
                .doesNotContain("at least");
        assertThat(text(pdf(startUp(-20, -4.2), ReportKind.HOUSEHOLDER)))
                .contains("at least 4.2 Pa at every test hole read")
                .contains("0.017 inches");
    }

    private Job startUp(double... fanOn) {
        List<Stage.HoleReading> read = new ArrayList<>();
        for (int i = 0; i < fanOn.length; i++)
            read.add(new Stage.HoleReading(
                    solved.scenario().testHoles().get(i).id(),
                    OptionalDouble.empty(),
                    OptionalDouble.of(fanOn[i]),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    ""));
        Stage stage = new Stage("start", StageKind.START_UP, Map.of(), Map.of(), read, List.of(), "", "");
        return new Job(
                solved,
                List.of(new Job.Read(stage, Optional.empty())),
                Optional.empty(),
                full.record(),
                full.provenance());
    }

    /** A year's line says what was not worked out instead of showing a dash. */
    @Test
    void whatWasNotWorkedOutIsSaid() throws IOException {
        Job sized = Jobs.of(solved, full.record(), full.provenance(), true, Progress.NONE);
        assertThat(text(pdf(sized, ReportKind.DESIGN)))
                .contains("Heat for the room air drawn out was not worked out")
                .doesNotContain("– kWh");
    }

    @Test
    void aRecordHasBookmarksStructureAndLanguage() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(full, ReportKind.values()))) {
            var catalog = document.getDocumentCatalog();
            assertThat(catalog.getLanguage()).isEqualTo("en");
            assertThat(catalog.getMarkInfo().isMarked()).isTrue();
            List<String> marks = new ArrayList<>();
            for (PDOutlineItem item : catalog.getDocumentOutline().children()) marks.add(item.getTitle());
            assertThat(marks).containsExactly("Design record", "Test record", "Start-up record", "Your radon system");
            PDStructureElement root = (PDStructureElement)
                    catalog.getStructureTreeRoot().getKids().get(0);
            List<String> types = root.getKids().stream()
                    .map(k -> ((PDStructureElement) k).getStructureType())
                    .toList();
            assertThat(types).startsWith("H1").contains("H2", "P", "Table", "L", "Figure");
            assertThat(root.getKids().stream()
                            .map(k -> (PDStructureElement) k)
                            .filter(e -> e.getStructureType().equals("Figure")))
                    .isNotEmpty()
                    .allSatisfy(e -> assertThat(e.getAlternateDescription()).hasSizeGreaterThan(20));
            assertThat(catalog.getStructureTreeRoot().getParentTree().getNumbers())
                    .hasSize(document.getNumberOfPages());
        }
    }

    @Test
    void theSameJobGivesTheSameBytes() {
        assertThat(pdf(full, ReportKind.TEST)).isEqualTo(pdf(full, ReportKind.TEST));
    }

    @Test
    void numbersHaveTheMarkOfThePlace() {
        Numbers german = new Numbers(Unit.PASCAL, Unit.LITRE_PER_SECOND, Unit.METRE, Locale.GERMANY);
        assertThat(german.pressureText(-4.25)).isEqualTo("−4,3 Pa");
        assertThat(german.tape(3.817)).isEqualTo("3,82 m");
        assertThat(german.scientific(1.5e-8, 2)).isEqualTo("1,50e-08");
        assertThat(german.pressure(Double.NaN)).isEqualTo(Numbers.NONE);
    }

    /** Tools of Debian that share no code with this program; skipped where one is not installed. */
    @ParameterizedTest
    @CsvSource({"qpdf,--check", "pdffonts,", "pdftotext,-layout"})
    void anotherProgramReadsIt(String tool, String option) throws Exception {
        assumeTrue(installed(tool), tool + " is not installed");
        Path file = folder.resolve(tool + ".pdf");
        Files.write(file, pdf(full, ReportKind.values()));
        List<String> command = new ArrayList<>(List.of(tool));
        if (option != null) command.add(option);
        command.add(file.toString());
        if (tool.equals("pdftotext")) command.add("-");
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(said).isZero();
        switch (tool) {
            case "qpdf" ->
                assertThat(said)
                        .contains("No syntax or stream encoding errors found")
                        .doesNotContain("WARNING");
            case "pdffonts" ->
                assertThat(said.lines().skip(2))
                        .hasSize(2)
                        .allSatisfy(l ->
                                assertThat(l).contains("DejaVuSansCondensed").containsPattern("yes +yes +yes"));
            default ->
                assertThat(said)
                        .contains("61 Bq/m3, alpha track")
                        .contains(numbers().pressure(solved.holes().get(0).fanOn()));
        }
    }

    private static boolean installed(String tool) {
        return List.of(System.getenv("PATH").split(":")).stream().anyMatch(p -> Files.isExecutable(Path.of(p, tool)));
    }
}
