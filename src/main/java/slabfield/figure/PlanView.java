package slabfield.figure;

import slabfield.model.Point;

/**
 * Where a place on the plan stands on the page: {@code pageX = originX + scale x}, {@code pageY = originY - scale y}.
 * The plan's y counts up, the page's down.
 *
 * @param scale points per metre, above 0
 * @param originX page x of the plan's origin [points]
 * @param originY page y of the plan's origin [points]
 */
public record PlanView(double scale, double originX, double originY) {
    public PlanView {
        if (!(scale > 0) || !Double.isFinite(originX + originY + scale))
            throw new IllegalArgumentException("a plan view needs a scale above 0 and a finite origin");
    }

    /** The largest view that shows the whole of some bounds in a box, centred in it. */
    public static PlanView fit(Bounds bounds, Box box) {
        double wide = Math.max(bounds.width(), 1e-3), high = Math.max(bounds.height(), 1e-3);
        double scale = Math.max(1e-3, Math.min(box.width() / wide, box.height() / high));
        double middleX = (bounds.left() + bounds.right()) / 2, middleY = (bounds.bottom() + bounds.top()) / 2;
        return new PlanView(
                scale,
                (box.left() + box.right()) / 2 - scale * middleX,
                (box.top() + box.bottom()) / 2 + scale * middleY);
    }

    public double pageX(double x) {
        return originX + scale * x;
    }

    public double pageY(double y) {
        return originY - scale * y;
    }

    /** The place on the plan under a point of the page. */
    public Point plan(double pageX, double pageY) {
        return new Point((pageX - originX) / scale, (originY - pageY) / scale);
    }

    /** What a box of the page shows of the plan. */
    public Bounds bounds(Box box) {
        Point low = plan(box.left(), box.bottom()), high = plan(box.right(), box.top());
        return new Bounds(low.x(), low.y(), high.x(), high.y());
    }

    /** Where bounds of the plan stand on the page. */
    public Box box(Bounds bounds) {
        return new Box(pageX(bounds.left()), pageY(bounds.top()), pageX(bounds.right()), pageY(bounds.bottom()));
    }

    /** Moved on the page. */
    public PlanView panned(double dx, double dy) {
        return new PlanView(scale, originX + dx, originY + dy);
    }

    /** Enlarged by a factor about a point of the page, which keeps its place. */
    public PlanView zoomed(double factor, double pageX, double pageY) {
        return new PlanView(scale * factor, pageX + factor * (originX - pageX), pageY + factor * (originY - pageY));
    }
}
