package slabfield.network;

import java.util.ArrayList;
import java.util.List;
import slabfield.model.Point;

/** Stations of a tile, one to each of its pieces. */
final class TileStations {
    private final List<Point> places = new ArrayList<>();
    private final List<Integer> nodes = new ArrayList<>();

    void add(Pieces.Piece piece, int node) {
        places.add(new Point(piece.x(), piece.y()));
        nodes.add(node);
    }

    /** Node of the station nearest to a place, or -1 where the tile has none. */
    int nearest(Point at) {
        int best = -1;
        double distance = Double.MAX_VALUE;
        for (int k = 0; k < places.size(); k++) {
            double d = places.get(k).distanceTo(at);
            if (d < distance) {
                distance = d;
                best = nodes.get(k);
            }
        }
        return best;
    }
}
