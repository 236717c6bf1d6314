package slabfield.figure;

import java.util.ArrayList;
import java.util.List;

/** Keeps what is written on it, measured with real letters. */
final class RecordingCanvas implements Canvas {
    /** A text without rotation and the room it takes. */
    record Written(String text, Box box, boolean upright) {}

    final List<Written> written = new ArrayList<>();
    int images;
    private final double width;
    private final double height;

    RecordingCanvas(double width, double height) {
        this.width = width;
        this.height = height;
    }

    List<String> texts() {
        return written.stream().map(Written::text).toList();
    }

    String all() {
        return String.join(" ", texts());
    }

    @Override
    public double width() {
        return width;
    }

    @Override
    public double height() {
        return height;
    }

    @Override
    public double pixelsPerPoint() {
        return 1;
    }

    @Override
    public void fill(List<double[]> rings, int argb) {}

    @Override
    public void line(double[] line, boolean closed, Pen pen) {}

    @Override
    public void text(String text, double x, double y, Anchor anchor, double rotation, Lettering lettering) {
        double wide = textWidth(text, lettering);
        double left = x - (anchor == Anchor.START ? 0 : anchor == Anchor.MIDDLE ? wide / 2 : wide);
        Box box = new Box(left, y - 0.75 * lettering.size(), left + wide, y + 0.2 * lettering.size());
        if (!text.isEmpty()) written.add(new Written(text, box, rotation == 0));
    }

    @Override
    public void image(int[] argb, int columns, int rows, Box box) {
        images++;
    }

    @Override
    public void clipped(List<double[]> rings, Runnable drawing) {
        drawing.run();
    }
}
