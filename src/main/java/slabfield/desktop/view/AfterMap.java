package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import javafx.animation.AnimationTimer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.ObservableValue;

/** What the first map need not wait for: parts of the window that are made when it is on the screen. */
final class AfterMap {
    /** Frames from the map's being there to its being seen. */
    private static final int FRAMES = 2;

    private final List<Runnable> parts = new ArrayList<>();
    private final ReadOnlyBooleanWrapper made = new ReadOnlyBooleanWrapper();

    /** @param map changes when a map has been painted */
    AfterMap(ObservableValue<?> map) {
        map.addListener(new ChangeListener<Object>() {
            @Override
            public void changed(ObservableValue<?> o, Object was, Object is) {
                map.removeListener(this);
                inSomeFrames();
            }
        });
    }

    private void inSomeFrames() {
        new AnimationTimer() {
            private int frames;

            @Override
            public void handle(long now) {
                if (++frames <= FRAMES) return;
                stop();
                made.set(true);
                parts.forEach(Runnable::run);
                parts.clear();
            }
        }.start();
    }

    /** Does something when the map is on the screen; at once where it is. */
    void then(Runnable part) {
        if (made.get()) part.run();
        else parts.add(part);
    }

    /** True once all is made. */
    ReadOnlyBooleanProperty made() {
        return made.getReadOnlyProperty();
    }
}
