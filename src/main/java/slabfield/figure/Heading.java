package slabfield.figure;

import java.util.List;

/** The head of every figure: its name, and below it a stamp that says whether it is predicted or measured. */
final class Heading {
    /** Height of the head [points at size 1]. */
    static final double HEIGHT = 38;

    private final Canvas canvas;
    private final Box page;
    private final Ink ink;

    Heading(Canvas canvas, Box page, Ink ink) {
        this.canvas = canvas;
        this.page = page;
        this.ink = ink;
    }

    /**
     * Draws it at the top of the page.
     *
     * @param colour of the stamp
     * @param texts what the figure shows; the first that fits beside the stamp, or else the last, cut
     */
    void draw(String name, String word, int colour, String... texts) {
        double u = ink.size();
        var large = new Canvas.Lettering(13 * u, true, Ink.DARK, 0);
        canvas.text(
                Words.cut(canvas, name, page.width(), large),
                page.left(),
                page.top() + 11 * u,
                Canvas.Anchor.START,
                0,
                large);
        var stamp = new Canvas.Lettering(ink.body(), true, Ink.WHITE, 0);
        double wide = canvas.textWidth(word, stamp) + 8 * u, top = page.top() + 17 * u;
        canvas.fill(List.of(new Box(page.left(), top, page.left() + wide, top + 13 * u).ring()), colour);
        canvas.text(word, page.left() + 4 * u, top + 9.6 * u, Canvas.Anchor.START, 0, stamp);
        var plain = ink.text(Ink.DARK);
        double room = page.width() - wide - 6 * u;
        String text = List.of(texts).stream()
                .filter(t -> canvas.textWidth(t, plain) <= room)
                .findFirst()
                .orElse(texts[texts.length - 1]);
        canvas.text(
                Words.cut(canvas, text, room, plain),
                page.left() + wide + 6 * u,
                top + 9.6 * u,
                Canvas.Anchor.START,
                0,
                plain);
    }
}
