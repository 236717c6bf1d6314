package slabfield.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.List;

/** Draws with Java2D, smooth. */
public final class AwtCanvas implements Canvas {

    private final Graphics2D graphics;
    private final double width;
    private final double height;
    private final double pixelsPerPoint;

    /**
     * A page on some graphics, whose transform is scaled here from pixels to points.
     *
     * @param graphics used as they are, and changed
     * @param width of the page [points]
     * @param height of the page [points]
     * @param pixelsPerPoint of the page
     */
    public AwtCanvas(Graphics2D graphics, double width, double height, double pixelsPerPoint) {
        this.graphics = graphics;
        this.width = width;
        this.height = height;
        this.pixelsPerPoint = pixelsPerPoint;
        graphics.scale(pixelsPerPoint, pixelsPerPoint);
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
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
        return pixelsPerPoint;
    }

    @Override
    public void fill(List<double[]> rings, int argb) {
        graphics.setColor(new Color(argb, true));
        graphics.fill(shape(rings));
    }

    @Override
    public void line(double[] line, boolean closed, Pen pen) {
        graphics.setColor(new Color(pen.argb(), true));
        graphics.setStroke(stroke(pen));
        graphics.draw(path(new Path2D.Double(), line, closed));
    }

    @Override
    public void text(String text, double x, double y, Anchor anchor, double rotation, Lettering lettering) {
        double shift = switch (anchor) {
            case START -> 0;
            case MIDDLE -> -textWidth(text, lettering) / 2;
            case END -> -textWidth(text, lettering);
        };
        AffineTransform place = AffineTransform.getTranslateInstance(x, y);
        place.rotate(rotation);
        place.translate(shift, 0);
        Shape letters = place.createTransformedShape(Typeface.font(text, lettering)
                .createGlyphVector(Typeface.METRICS, text)
                .getOutline());
        if (lettering.halo() != 0) {
            graphics.setColor(new Color(lettering.halo(), true));
            float rim = (float) lettering.haloWidth();
            graphics.setStroke(new BasicStroke(rim, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            graphics.draw(letters);
        }
        graphics.setColor(new Color(lettering.argb(), true));
        graphics.fill(letters);
    }

    @Override
    public void image(int[] argb, int columns, int rows, Box box) {
        BufferedImage image = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_ARGB);
        image.setRGB(0, 0, columns, rows, argb, 0, columns);
        AffineTransform place = AffineTransform.getTranslateInstance(box.left(), box.top());
        place.scale(box.width() / columns, box.height() / rows);
        graphics.drawImage(image, place, null);
    }

    @Override
    public void clipped(List<double[]> rings, Runnable drawing) {
        Shape before = graphics.getClip();
        graphics.clip(shape(rings));
        drawing.run();
        graphics.setClip(before);
    }

    private static BasicStroke stroke(Pen pen) {
        float width = (float) pen.width();
        if (pen.dash().isEmpty()) return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 4);
        float[] dash = new float[pen.dash().size()];
        for (int i = 0; i < dash.length; i++) dash[i] = pen.dash().get(i).floatValue();
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 4, dash, 0);
    }

    private static Path2D shape(List<double[]> rings) {
        Path2D shape = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        for (double[] ring : rings) path(shape, ring, true);
        return shape;
    }

    private static Path2D path(Path2D path, double[] line, boolean closed) {
        path.moveTo(line[0], line[1]);
        for (int i = 2; i < line.length; i += 2) path.lineTo(line[i], line[i + 1]);
        if (closed) path.closePath();
        return path;
    }
}
