package slabfield.model;

import java.util.Optional;

/**
 * A hollow-block wall whose cores the soil gas can enter at the foot.
 *
 * @param id what the user calls it
 * @param path the line of its foot on the plan
 * @param height of the wall [m]
 * @param tops how far the block tops are closed
 * @param topArea open area of the tops per length of wall when fully open [m2/m]
 * @param joint conductance from the layer into the cores at the foot, per length [m3/(s Pa m)]
 * @param faceToRoom conductance through the inside face per area [m/(s Pa)]
 * @param faceToOutdoors conductance through the outside face per area [m/(s Pa)]
 * @param along conductance of the cores along the wall, times length [m4/(s Pa)]
 * @param joinsAtCorners true where its cores open into those of walls that share an end
 * @param tile drain tile that the cores drain into, if any
 */
public record BlockWall(
        String id,
        Path path,
        double height,
        Seal tops,
        double topArea,
        double joint,
        double faceToRoom,
        double faceToOutdoors,
        double along,
        boolean joinsAtCorners,
        Optional<TileJoint> tile) {
    public static final double USUAL_HEIGHT = 2.1336;
    public static final double FULLY_OPEN_TOP_AREA = 0.09;
    public static final double USUAL_JOINT = 1e-4;
    public static final double USUAL_FACE = 2e-5;
    public static final double USUAL_ALONG = 1e-3;

    /**
     * How the cores drain into a tile.
     *
     * @param tile id of the drain tile
     * @param conductance of the weep openings per length of wall [m3/(s Pa m)]
     */
    public record TileJoint(String tile, double conductance) {
        public TileJoint {
            Check.name("id", tile);
            Check.positive("conductance", conductance);
        }
    }

    public BlockWall {
        Check.name("id", id);
        Check.present("path", path);
        Check.positive("height", height);
        Check.present("tops", tops);
        Check.notNegative("area", topArea);
        Check.notNegative("joint", joint);
        Check.notNegative("faceToRoom", faceToRoom);
        Check.notNegative("faceToOutdoors", faceToOutdoors);
        Check.notNegative("along", along);
        Check.present("tile", tile);
    }

    public BlockWall with(Seal otherTops) {
        return new BlockWall(
                id, path, height, otherTops, topArea, joint, faceToRoom, faceToOutdoors, along, joinsAtCorners, tile);
    }
}
