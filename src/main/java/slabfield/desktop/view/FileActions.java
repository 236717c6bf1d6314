package slabfield.desktop.view;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Alert;
import javafx.scene.control.ButtonBar.ButtonData;
import javafx.scene.control.ButtonType;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.input.TransferMode;
import javafx.stage.FileChooser;
import javafx.stage.FileChooser.ExtensionFilter;
import javafx.stage.Stage;
import slabfield.desktop.viewmodel.Example;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.lesson.Worksheet;
import slabfield.figure.Figure;

/** Opens, saves and exports, and asks before anything would be lost. */
final class FileActions {
    private static final ExtensionFilter SCENARIOS = new ExtensionFilter("Scenario files", "*.json");
    private static final ExtensionFilter PICTURES = new ExtensionFilter("PNG pictures", "*.png");
    private static final ExtensionFilter PDF = new ExtensionFilter("PDF files", "*.pdf");
    private static final ExtensionFilter DRAWINGS = new ExtensionFilter("SVG drawings", "*.svg");
    /** Width of a map and of an A4 sheet [points]. */
    private static final double MAP_WIDTH = 864;

    private static final double PAPER_WIDTH = 595;
    /** Width of a text to read [px]. */
    private static final double TELLING = 540;

    private final Stage stage;
    private final Workbench bench;
    private final Supplier<Figure> map;

    /** @param map as it is seen, as a figure */
    FileActions(Stage stage, Workbench bench, Supplier<Figure> map) {
        this.stage = stage;
        this.bench = bench;
        this.map = map;
        bench.trouble().addListener((o, was, is) -> is.ifPresent(this::show));
        stage.setOnCloseRequest(e -> {
            if (!mayLeave()) e.consume();
        });
    }

    void open() {
        if (!mayLeave()) return;
        File file = chooser("Open a scenario", SCENARIOS).showOpenDialog(stage);
        if (file != null) bench.open(file.toPath());
    }

    void open(Path file) {
        if (mayLeave()) bench.open(file);
    }

    void open(Example example) {
        if (mayLeave()) bench.open(example);
    }

    boolean save() {
        Optional<Path> file = bench.document().file().get();
        return file.isPresent() ? bench.save(file.get()) : saveAs();
    }

    boolean saveAs() {
        FileChooser chooser = chooser("Save the scenario", SCENARIOS);
        chooser.setInitialFileName(fileName() + ".json");
        File file = chooser.showSaveDialog(stage);
        return file != null && bench.save(file.toPath());
    }

    /** Writes the map as it is seen, with title and key. */
    void exportPicture() {
        export("Export the map", map.get(), MAP_WIDTH, ".png");
    }

    /** Writes a sheet of a lesson. */
    void saveSheet(Worksheet sheet) {
        export("Save to print", sheet, PAPER_WIDTH, ".pdf");
    }

    private void export(String title, Figure figure, double width, String ending) {
        FileChooser chooser = chooser(title, ending.equals(".pdf") ? PDF : PICTURES);
        chooser.getExtensionFilters()
                .addAll(1, ending.equals(".pdf") ? List.of(PICTURES, DRAWINGS) : List.of(PDF, DRAWINGS));
        chooser.setInitialFileName(plain(figure.title()) + ending);
        File file = chooser.showSaveDialog(stage);
        if (file != null) bench.exportFigure(figure, width, file.toPath());
    }

    /** Asks for a picture to trace. */
    Optional<Path> choosePicture() {
        File file = chooser(
                        "Choose a picture of the plan",
                        new ExtensionFilter("Pictures", "*.png", "*.jpg", "*.jpeg", "*.PNG", "*.JPG", "*.JPEG"))
                .showOpenDialog(stage);
        return Optional.ofNullable(file).map(File::toPath);
    }

    /** Lays a picture under the drawing. */
    void layPicture() {
        choosePicture().ifPresent(bench.pictures()::choose);
    }

    private static boolean isPicture(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).matches(".*\\.(png|jpe?g)");
    }

    private String fileName() {
        return plain(bench.document().scenario().get().name());
    }

    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
    }

    private FileChooser chooser(String title, ExtensionFilter filter) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.getExtensionFilters().addAll(filter, new ExtensionFilter("All files", "*"));
        bench.document()
                .file()
                .get()
                .map(Path::toAbsolutePath)
                .map(Path::getParent)
                .map(Path::toFile)
                .filter(File::isDirectory)
                .ifPresent(chooser::setInitialDirectory);
        return chooser;
    }

    /** Takes files that are dropped on the window. */
    void acceptDrops(Scene scene) {
        scene.setOnDragOver(e -> {
            if (e.getDragboard().hasFiles()) e.acceptTransferModes(TransferMode.COPY);
            e.consume();
        });
        scene.setOnDragDropped(e -> {
            List<File> files = e.getDragboard().getFiles();
            e.setDropCompleted(!files.isEmpty());
            e.consume();
            if (files.isEmpty()) return;
            Path first = files.get(0).toPath();
            if (isPicture(first)) bench.pictures().choose(first);
            else open(first);
        });
    }

    /** True where nothing would be lost, or the user has decided. */
    boolean mayLeave() {
        return mayDropDraft() && mayDropChanges();
    }

    private boolean mayDropDraft() {
        if (!bench.checklist().draft().isBegun()) return true;
        ButtonType drop = new ButtonType("Throw it away", ButtonData.NO);
        Alert ask = alert(Alert.AlertType.CONFIRMATION, "A draft test is not recorded");
        ask.setContentText("In the Checklist tab a draft test was begun and not recorded.");
        ask.getButtonTypes().setAll(drop, ButtonType.CANCEL);
        return ask.showAndWait().orElse(ButtonType.CANCEL) == drop;
    }

    private boolean mayDropChanges() {
        if (!bench.document().dirty().get()) return true;
        ButtonType save = new ButtonType("Save", ButtonData.YES), leave = new ButtonType("Do not save", ButtonData.NO);
        Alert ask = alert(Alert.AlertType.CONFIRMATION, "Changes are not saved");
        ask.setContentText(
                "\u201c" + bench.document().scenario().get().name() + "\u201d was changed. Save the changes?");
        ask.getButtonTypes().setAll(save, leave, ButtonType.CANCEL);
        ButtonType answer = ask.showAndWait().orElse(ButtonType.CANCEL);
        if (answer == save) return save();
        return answer == leave;
    }

    private void show(Workbench.Trouble trouble) {
        Alert alert = alert(Alert.AlertType.ERROR, trouble.title());
        TextArea text = new TextArea(trouble.text());
        text.setEditable(false);
        text.setWrapText(true);
        text.setPrefColumnCount(60);
        text.setPrefRowCount((int)
                Math.min(16, 2 + trouble.text().lines().count() + trouble.text().length() / 70));
        alert.getDialogPane().setContent(text);
        alert.showAndWait();
        bench.trouble().set(Optional.empty());
    }

    private Alert alert(Alert.AlertType type, String title) {
        Alert alert = new Alert(type);
        alert.initOwner(stage);
        alert.setTitle("Slabfield");
        alert.setHeaderText(title);
        alert.getDialogPane().getStylesheets().setAll(stage.getScene().getStylesheets());
        return alert;
    }

    /** Shows what the program was held against. */
    void showValidation() {
        ValidationWindow.open(stage, bench.look().presentation().get());
    }

    /** Shows a text to read. */
    void tell(String title, String words) {
        Label paragraph = Parts.paragraph(words);
        paragraph.setPrefWidth(TELLING);
        tell(title, paragraph);
    }

    /** Shows something to read. */
    void tell(String title, Node content) {
        Alert alert = alert(Alert.AlertType.INFORMATION, title);
        alert.setGraphic(null);
        alert.getDialogPane().setContent(content);
        alert.showAndWait();
    }
}
