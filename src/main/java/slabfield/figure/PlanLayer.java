package slabfield.figure;

import java.util.List;

/** Something that is laid over the field of a plan, on whatever the plan is drawn. */
public interface PlanLayer {
    /** Where on the plan's stack a layer lies. */
    enum Depth {
        /** On the field, below the house, its signs and labels; seen under slabs alone. */
        FIELD,
        /** Above everything. */
        TOP
    }

    /** Receives what a legend says of a layer. */
    interface Key {
        /** Draws a sample around the middle of its place, on the canvas of the legend. */
        interface Sample {
            void paint(Canvas canvas, double x, double y, double halfWidth);
        }

        void entry(Sample sample, String text);

        void paragraph(String text);
    }

    /**
     * Draws it.
     *
     * @param box of the page that the plan has
     * @param fontScale enlarges text, symbols and lines, 1 for print
     */
    void draw(Canvas canvas, PlanView view, Box box, double fontScale);

    default Depth depth() {
        return Depth.FIELD;
    }

    /** What labels of the plan must not cover, as it will be drawn on that view and box. */
    default List<Box> keepsFree(Canvas measure, PlanView view, Box box, double fontScale) {
        return List.of();
    }

    /** True where it takes the place of the field, so that the field's isolines and legend are left out. */
    default boolean hidesField() {
        return false;
    }

    /** True where nothing predicted may be seen beside it; the field and predicted labels are left out. */
    default boolean hidesPrediction() {
        return false;
    }

    /** What a sheet with this layer says it shows, in place of the pressure; empty for no change. */
    default String heading() {
        return "";
    }

    /** Says what it means. */
    default void explain(Key key, double fontScale) {}
}
