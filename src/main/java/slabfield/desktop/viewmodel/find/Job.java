package slabfield.desktop.viewmodel.find;

import slabfield.desktop.viewmodel.HouseSearch;

/**
 * Long work that a page asks for.
 *
 * @param words on its button
 * @param search how it stands
 * @param start begins it
 */
public record Job(String words, HouseSearch<?> search, Runnable start) {}
