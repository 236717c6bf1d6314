package slabfield.io;

import java.util.Locale;
import slabfield.field.Grid;
import slabfield.field.PressureField;

/** A pressure field as a table, one row for each cell, row by row up the plan: RFC 4180, decimal points, SI. */
public final class FieldCsv {
    private static final String END = "\r\n";

    static final String HEADER = "x_m,y_m,pressure_Pa,kind";

    private FieldCsv() {}

    /** The table; the pressure is empty where a cell has none. Cells under no slab are listed too. */
    public static String text(PressureField field) {
        Grid grid = field.grid();
        StringBuilder text = new StringBuilder(HEADER).append(END);
        for (int row = 0; row < grid.rows(); row++)
            for (int column = 0; column < grid.columns(); column++) {
                int cell = grid.index(column, row);
                double pressure = field.pressure()[cell];
                text.append(grid.x(column)).append(',').append(grid.y(row)).append(',');
                if (Double.isFinite(pressure)) text.append(pressure);
                text.append(',')
                        .append(field.kind()[cell].name().toLowerCase(Locale.ROOT))
                        .append(END);
            }
        return text.toString();
    }
}
