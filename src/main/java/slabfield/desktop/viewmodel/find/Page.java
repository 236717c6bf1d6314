package slabfield.desktop.viewmodel.find;

import java.util.List;
import java.util.Optional;

/** One question to the readings or to the house, with what answers it. All texts are in the units shown when they are asked for. */
public interface Page {
    /** On its button. */
    String title();

    /** What it is for, in a sentence. */
    String help();

    /** Long work that it needs; none where it follows the house by itself. */
    List<Job> jobs();

    /** What it says now. */
    Sheet sheet();

    /** Names of its pictures, the first one first shown. */
    List<String> views();

    /**
     * One of its pictures.
     *
     * @param view one of {@link #views}
     * @param glance what somebody points at
     */
    Optional<Picture> picture(String view, Optional<Glances.Glance> glance);

    /** True where what it says belongs to an earlier state of the house. */
    default boolean stale() {
        return jobs().stream().anyMatch(j -> j.search().outOfDate().get());
    }
}
