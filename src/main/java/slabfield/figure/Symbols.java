package slabfield.figure;

import java.util.List;
import slabfield.model.OpeningKind;
import slabfield.model.SealState;

/**
 * Signs for things at a point. How far an opening is closed shows in how much of its sign is dark: open is empty, loose
 * half dark, covered dark with a light slit, sealed wholly dark.
 */
final class Symbols {
    private final Canvas canvas;
    private final Ink ink;

    Symbols(Canvas canvas, Ink ink) {
        this.canvas = canvas;
        this.ink = ink;
    }

    /** How far any of the signs reaches from its middle [points]. */
    double reach() {
        return 7 * ink.size();
    }

    /** A ring around a wedge that points up: air goes up here. */
    void suction(double x, double y) {
        double r = 6 * ink.size(), w = 3.6 * ink.size();
        canvas.fill(List.of(Lines.circle(x, y, r + 1.4 * ink.size())), Ink.WHITE);
        canvas.line(Lines.circle(x, y, r), true, ink.solid(Ink.DARK, 1.6));
        double[] wedge = {x, y - w, x + 0.95 * w, y + 0.75 * w, x, y + 0.2 * w, x - 0.95 * w, y + 0.75 * w};
        canvas.fill(List.of(wedge), Ink.DARK);
    }

    /** A disc in the colour of the prediction. */
    void hole(double x, double y, int predicted) {
        double r = 3.2 * ink.size();
        canvas.fill(List.of(Lines.circle(x, y, r + 1.6 * ink.size())), Ink.WHITE);
        canvas.fill(List.of(Lines.circle(x, y, r)), predicted);
        canvas.line(Lines.circle(x, y, r), true, ink.solid(Ink.DARK, 1.1));
    }

    /** A square in the colour of the measurement, to go behind {@link #hole}. */
    void measured(double x, double y, int colour) {
        double r = 6 * ink.size();
        canvas.fill(List.of(Box.around(x, y, r + 1.2 * ink.size()).ring()), Ink.WHITE);
        canvas.fill(List.of(Box.around(x, y, r).ring()), colour);
        canvas.line(Box.around(x, y, r).ring(), true, ink.solid(Ink.DARK, 1.1));
    }

    /** Four strokes that point at a place without covering it. */
    void weakest(double x, double y) {
        double near = 2.2 * ink.size(), far = 6.5 * ink.size();
        for (int pass = 0; pass < 2; pass++)
            for (int i = 0; i < 4; i++) {
                double sx = i % 2 == 0 ? 1 : -1, sy = i < 2 ? 1 : -1;
                double[] stroke = {x + sx * near, y + sy * near, x + sx * far, y + sy * far};
                canvas.line(stroke, false, pass == 0 ? ink.solid(Ink.WHITE, 4) : ink.solid(Ink.DARK, 1.9));
            }
    }

    /** The shape tells the kind, the filling the state. */
    void opening(OpeningKind kind, SealState state, double x, double y) {
        double r = 5 * ink.size();
        double[] ring = outline(kind, x, y, r);
        canvas.line(ring, true, ink.solid(Ink.WHITE, 4));
        boolean light = state == SealState.OPEN || state == SealState.LOOSE;
        canvas.fill(List.of(ring), light ? Ink.WHITE : Ink.DARK);
        if (state == SealState.LOOSE) canvas.fill(List.of(held(ring, new Box(x - r, y, x + r, y + r))), Ink.DARK);
        if (state == SealState.COVERED)
            canvas.fill(List.of(held(ring, new Box(x - 0.13 * r, y - r, x + 0.13 * r, y + r))), Ink.WHITE);
        canvas.line(ring, true, ink.solid(Ink.DARK, 1.3));
        if (kind == OpeningKind.SUMP)
            canvas.line(Lines.circle(x, y, r + 2.2 * ink.size()), true, ink.solid(Ink.DARK, 0.9));
    }

    /** A convex ring with every corner moved into a box, which leaves about the part of it inside. */
    private static double[] held(double[] ring, Box box) {
        double[] held = new double[ring.length];
        for (int i = 0; i < ring.length; i += 2) {
            held[i] = Math.max(box.left(), Math.min(box.right(), ring[i]));
            held[i + 1] = Math.max(box.top(), Math.min(box.bottom(), ring[i + 1]));
        }
        return held;
    }

    private static double[] outline(OpeningKind kind, double x, double y, double r) {
        return switch (kind) {
            case SUMP -> Lines.circle(x, y, 0.85 * r);
            case PENETRATION -> Box.around(x, y, 0.75 * r).ring();
            case BLOCK_OUT -> new Box(x - r, y - 0.6 * r, x + r, y + 0.6 * r).ring();
            case FLOOR_DRAIN -> regular(x, y, r, 6);
            case JOINT, CRACK -> regular(x, y, r, 3);
            case OTHER -> regular(x, y, r, 4);
        };
    }

    private static double[] regular(double x, double y, double r, int corners) {
        double[] ring = new double[2 * corners];
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * i / corners - Math.PI / 2;
            ring[2 * i] = x + r * Math.cos(angle);
            ring[2 * i + 1] = y + r * Math.sin(angle);
        }
        return ring;
    }
}
