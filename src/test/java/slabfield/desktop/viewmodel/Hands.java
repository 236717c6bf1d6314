package slabfield.desktop.viewmodel;

/** What a user does; each call is one action: a key, a click, or a drag from press to release. */
public interface Hands {
    void key(Tool tool);

    void click(double x, double y);

    void drag(double x, double y, double toX, double toY);
}
