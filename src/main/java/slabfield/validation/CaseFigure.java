package slabfield.validation;

import java.util.List;
import java.util.Locale;

/**
 * The picture of a case as SVG: where its claims have a place on an axis, source and ours as a curve; else the error of
 * each claim in parts of its tolerance.
 */
final class CaseFigure {
    private static final int WIDTH = 640;
    private static final int LEFT = 220;
    private static final int ROW = 18;
    private static final String INK = "#222222";
    private static final String OURS = "#0072b2";
    private static final String BAND = "#cfe8cf";
    private static final String RED = "#b00020";

    private CaseFigure() {}

    static String svg(Outcome outcome) {
        List<Outcome.Check> along = outcome.checks().stream()
                .filter(c -> c.claim().x().isPresent() && c.claim().reference().isPresent())
                .toList();
        return along.size() > 2 ? curve(outcome, along) : errors(outcome.checks());
    }

    private static String errors(List<Outcome.Check> checks) {
        int height = 60 + ROW * checks.size();
        double middle = LEFT + (WIDTH - LEFT - 20) / 2.0, unit = (WIDTH - LEFT - 20) / 4.0;
        StringBuilder svg = open(height);
        svg.append(rect(middle - unit, 30, 2 * unit, ROW * checks.size(), BAND));
        svg.append(line(middle, 30, middle, 30 + ROW * checks.size(), INK));
        svg.append(text(middle, 20, "middle", "error in parts of the tolerance"));
        for (int t = -2; t <= 2; t++) svg.append(text(middle + t * unit, height - 14, "middle", Integer.toString(t)));
        for (int i = 0; i < checks.size(); i++) {
            Outcome.Check c = checks.get(i);
            double y = 30 + ROW * (i + 0.5), part = c.claim().partOfTolerance(c.ours());
            svg.append(text(LEFT - 8, y + 4, "end", shortened(c.claim().name())));
            svg.append(dot(middle + unit * Math.max(-2, Math.min(2, part)), y, c.agrees() ? OURS : RED));
        }
        return svg.append("</svg>\n").toString();
    }

    private static String curve(Outcome outcome, List<Outcome.Check> checks) {
        int height = 300;
        double left = 80, right = WIDTH - 20, top = 30, bottom = height - 50;
        double x0 = checks.stream()
                .mapToDouble(c -> c.claim().x().getAsDouble())
                .min()
                .orElse(0);
        double x1 = checks.stream()
                .mapToDouble(c -> c.claim().x().getAsDouble())
                .max()
                .orElse(1);
        double y0 = Math.min(
                0,
                checks.stream()
                        .mapToDouble(c -> Math.min(c.ours(), c.claim().low()))
                        .min()
                        .orElse(0));
        double y1 = Math.max(
                0,
                checks.stream()
                        .mapToDouble(c -> Math.max(c.ours(), c.claim().high()))
                        .max()
                        .orElse(1));
        StringBuilder svg = open(height);
        svg.append(line(left, bottom, right, bottom, INK)).append(line(left, top, left, bottom, INK));
        svg.append(text(left - 6, top + 4, "end", Numbers.value(y1, 3)))
                .append(text(left - 6, bottom, "end", Numbers.value(y0, 3)));
        svg.append(text(left, bottom + 16, "middle", Numbers.value(x0, 3)));
        svg.append(text(right, bottom + 16, "end", Numbers.value(x1, 3)));
        String axis = outcome.of().tree().path("axis").asText("");
        svg.append(text((left + right) / 2, bottom + 34, "middle", axis));
        svg.append(
                text(left, 16, "start", checks.get(0).claim().unit() + ": bars = source and tolerance, dots = ours"));
        for (Outcome.Check c : checks) {
            double x = left + (right - left) * (c.claim().x().getAsDouble() - x0) / (x1 - x0);
            double low = bottom - (bottom - top) * (c.claim().low() - y0) / (y1 - y0);
            double high = bottom - (bottom - top) * (c.claim().high() - y0) / (y1 - y0);
            double ours = bottom - (bottom - top) * (c.ours() - y0) / (y1 - y0);
            svg.append(rect(x - 5, Math.min(high, low - 2), 10, Math.max(2, low - high), BAND));
            svg.append(line(x - 7, (low + high) / 2, x + 7, (low + high) / 2, INK));
            svg.append(dot(x, ours, c.agrees() ? OURS : RED));
        }
        return svg.append("</svg>\n").toString();
    }

    private static StringBuilder open(int height) {
        return new StringBuilder(String.format(
                        Locale.ROOT,
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\""
                                + " font-family=\"sans-serif\" font-size=\"11\">%n<rect width=\"%d\" height=\"%d\" fill=\"#ffffff\"/>%n",
                        WIDTH,
                        height,
                        WIDTH,
                        height,
                        WIDTH,
                        height)
                .replace("\r", ""));
    }

    private static String shortened(String name) {
        return name.length() <= 36 ? name : name.substring(0, 35) + "\u2026";
    }

    private static String rect(double x, double y, double w, double h, String fill) {
        return String.format(
                Locale.ROOT,
                "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"%s\"/>\n",
                x,
                y,
                w,
                h,
                fill);
    }

    private static String line(double x0, double y0, double x1, double y1, String ink) {
        return String.format(
                Locale.ROOT,
                "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\"/>\n",
                x0,
                y0,
                x1,
                y1,
                ink);
    }

    private static String dot(double x, double y, String ink) {
        return String.format(Locale.ROOT, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"3.5\" fill=\"%s\"/>\n", x, y, ink);
    }

    private static String text(double x, double y, String anchor, String words) {
        String safe = words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
        return String.format(
                Locale.ROOT,
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" fill=\"%s\">%s</text>\n",
                x,
                y,
                anchor,
                INK,
                safe);
    }
}
