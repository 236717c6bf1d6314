package slabfield.desktop.view;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.PlanView;
import slabfield.model.Point;

/** Which part of the plan the map shows, in pixels of the screen. */
final class ViewPort {
    private static final double MARGIN = 34;

    /** Room for the foot of the map below the plan, as part of a margin. */
    private static final double FOOT = 0.35;

    private static final double LARGEST = 4000;
    private static final double SMALLEST = 1;

    private final ReadOnlyObjectWrapper<PlanView> view = new ReadOnlyObjectWrapper<>(new PlanView(50, 0, 400));
    private Bounds plan = new Bounds(0, 0, 1, 1);
    private double width = 1;
    private double height = 1;
    private boolean whole = true;
    private double margin = MARGIN;

    ReadOnlyObjectProperty<PlanView> view() {
        return view.getReadOnlyProperty();
    }

    /** Place on the plan under a pixel. */
    Point plan(double x, double y) {
        return view.get().plan(x, y);
    }

    double x(Point at) {
        return view.get().pageX(at.x());
    }

    double y(Point at) {
        return view.get().pageY(at.y());
    }

    /** Length on the plan of some pixels [m]. */
    double metres(double pixels) {
        return pixels / view.get().scale();
    }

    /** The house whose whole plan {@link #fit} shows. */
    void house(Bounds bounds) {
        plan = bounds;
        fit();
    }

    /** The house has changed: {@link #fit} shows it as it is now; what is seen stays. */
    void know(Bounds bounds) {
        plan = bounds;
    }

    /** Whether all of something can be seen. */
    boolean shows(Bounds bounds) {
        PlanView now = view.get();
        return new Box(0, 0, width, height)
                .holds(new Box(
                        now.pageX(bounds.left()),
                        now.pageY(bounds.top()),
                        now.pageX(bounds.right()),
                        now.pageY(bounds.bottom())));
    }

    /** Takes a margin that is enlarged with the letters. */
    void enlarge(double letters) {
        if (margin == MARGIN * letters) return;
        margin = MARGIN * letters;
        if (whole) fit();
    }

    void size(double newWidth, double newHeight) {
        double dx = (newWidth - width) / 2, dy = (newHeight - height) / 2;
        width = newWidth;
        height = newHeight;
        if (whole) fit();
        else view.set(view.get().panned(dx, dy));
    }

    /** Shows the whole plan. */
    void fit() {
        whole = true;
        double side = Math.min(margin, Math.min(width, height) / 4);
        view.set(PlanView.fit(
                plan,
                new Box(
                        side,
                        side,
                        Math.max(side + 1, width - side),
                        Math.max(side + 1, height - side - FOOT * margin))));
    }

    void pan(double dx, double dy) {
        whole = false;
        view.set(view.get().panned(dx, dy));
    }

    /** Enlarges about a pixel. */
    void zoom(double factor, double x, double y) {
        double scale = view.get().scale() * factor;
        if (scale < SMALLEST || scale > LARGEST) return;
        whole = false;
        view.set(view.get().zoomed(factor, x, y));
    }

    /** Enlarges about the middle. */
    void zoom(double factor) {
        zoom(factor, width / 2, height / 2);
    }

    double width() {
        return width;
    }

    double height() {
        return height;
    }
}
