package slabfield.model;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The house above the slab, as far as it drives the pressures and costs money.
 *
 * @param indoorTemperature [K]
 * @param neutralLevel height above the basement floor at which indoors and outdoors have the same pressure [m]
 * @param blowerDoor result of an airtightness test
 * @param naturalFlow air that leaks into the house by itself, averaged over the heating season [m3/s]
 * @param exhausts fans and appliances that blow air out of the house
 * @param designDay the worst day that the system is to hold on
 * @param climate how cold the year is
 * @param limits of the house's depressurization, chosen by the user
 * @param heating what warms the air that replaces the air drawn out
 * @param tariff what electricity costs
 */
public record House(
        double indoorTemperature,
        OptionalDouble neutralLevel,
        Optional<BlowerDoor> blowerDoor,
        OptionalDouble naturalFlow,
        List<Exhaust> exhausts,
        Optional<DesignDay> designDay,
        Climate climate,
        List<Limit> limits,
        Optional<Heating> heating,
        Optional<Tariff> tariff) {
    /** 20 C [K]. */
    public static final double USUAL_TEMPERATURE = 293.15;

    /** Nothing is said about it. */
    public static final House UNKNOWN = new House(
            USUAL_TEMPERATURE,
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            List.of(),
            Optional.empty(),
            Climate.UNKNOWN,
            List.of(),
            Optional.empty(),
            Optional.empty());

    public House {
        Check.temperature("indoorTemperature", indoorTemperature);
        Check.present("neutralLevel", neutralLevel).ifPresent(h -> Check.notNegative("neutralLevel", h));
        Check.present("blowerDoor", blowerDoor);
        Check.present("naturalFlow", naturalFlow).ifPresent(q -> Check.notNegative("naturalFlow", q));
        exhausts = Check.list("exhausts", exhausts);
        Check.present("designDay", designDay);
        Check.present("climate", climate);
        limits = Check.list("limits", limits);
        Check.present("heating", heating);
        Check.present("tariff", tariff);
    }

    /**
     * Airtightness by the law Q = Q0 (dp/dp0)^n.
     *
     * @param flow Q0 [m3/s]
     * @param pressure dp0 [Pa]
     * @param exponent n, 0.5 to 1
     */
    public record BlowerDoor(double flow, double pressure, double exponent) {
        public static final double USUAL_PRESSURE = 50;
        /** Common practice where it was not fitted. */
        public static final double USUAL_EXPONENT = 0.65;

        public BlowerDoor {
            Check.positive("flow", flow);
            Check.positive("pressure", pressure);
            Check.finite("exponent", exponent);
            if (exponent < 0.5 || exponent > 1) throw new ImpossibleValue("exponent", "must lie between 0.5 and 1");
        }
    }

    /**
     * Something that blows air out of the house.
     *
     * @param id what the user calls it
     * @param flow [m3/s]
     */
    public record Exhaust(String id, double flow) {
        public Exhaust {
            Check.name("id", id);
            Check.positive("flow", flow);
        }
    }

    /**
     * The worst day. All exhausts run on it.
     *
     * @param outdoorTemperature [K]
     * @param windSpeed [m/s]
     * @param windCoefficient Cw in the wind's pressure Cw rho v^2/2 by which the house lies below outdoors at the floor
     */
    public record DesignDay(double outdoorTemperature, double windSpeed, double windCoefficient) {
        /** Makes 2 Pa of 4 m/s, as a review of 1999 puts it for a typical house; houses differ widely. */
        public static final double USUAL_COEFFICIENT = 0.208;

        public DesignDay {
            Check.temperature("outdoorTemperature", outdoorTemperature);
            Check.notNegative("windSpeed", windSpeed);
            Check.notNegative("windCoefficient", windCoefficient);
        }
    }

    /**
     * A stretch of the year at one temperature.
     *
     * @param outdoorTemperature [K]
     * @param duration in a year [s]
     */
    public record Bin(double outdoorTemperature, double duration) {
        public Bin {
            Check.temperature("bins", outdoorTemperature);
            Check.positive("bins", duration);
        }
    }

    /**
     * How cold the year is.
     *
     * @param bins hours by outdoor temperature; empty where not known
     * @param degreeDays heating degree days times the seconds of a day; empty where not known [K s]
     * @param balance outdoor temperature below which the house is heated; degree days of bins are taken from it [K]
     */
    public record Climate(List<Bin> bins, OptionalDouble degreeDays, double balance) {
        /** 65 F, the base of American degree days [K]. */
        public static final double USUAL_BALANCE = 291.48333333333335;

        public static final Climate UNKNOWN = new Climate(List.of(), OptionalDouble.empty(), USUAL_BALANCE);
        private static final double LONGEST_YEAR = 366 * 86400.0;

        public Climate {
            bins = Check.list("bins", bins);
            Check.present("degreeDays", degreeDays).ifPresent(d -> Check.notNegative("degreeDays", d));
            Check.temperature("balance", balance);
            if (bins.stream().mapToDouble(Bin::duration).sum() > LONGEST_YEAR)
                throw new ImpossibleValue("bins", "must not add up to more than a year of 366 days");
        }

        /** As given, or else from the bins; empty where neither is known [K s]. */
        public OptionalDouble heatingSum() {
            if (degreeDays.isPresent() || bins.isEmpty()) return degreeDays;
            return OptionalDouble.of(bins.stream()
                    .mapToDouble(b -> Math.max(0, balance - b.outdoorTemperature()) * b.duration())
                    .sum());
        }
    }

    /**
     * A limit that the house's depressurization is held against.
     *
     * @param pressure how far the house may lie below outdoors [Pa]
     * @param source where the number comes from, and for which appliance
     */
    public record Limit(double pressure, String source) {
        public Limit {
            Check.positive("pressure", pressure);
            Check.words("source", source);
        }
    }

    /**
     * Heating.
     *
     * @param fuel in the user's words
     * @param efficiency heat delivered over heat in the fuel, above 0; above 1 for a heat pump
     * @param price of one unit of fuel, in the tariff's currency
     * @param unit that the fuel is sold by, such as "gal" or "kWh"
     * @param energyPerUnit heat in one unit of fuel [J]
     */
    public record Heating(String fuel, double efficiency, double price, String unit, double energyPerUnit) {
        public Heating {
            Check.name("fuel", fuel);
            Check.positive("efficiency", efficiency);
            Check.notNegative("price", price);
            Check.name("fuelUnit", unit);
            Check.positive("energyPerUnit", energyPerUnit);
        }
    }

    /**
     * What electricity costs.
     *
     * @param currency in the user's letters
     * @param perKilowattHour price of a kilowatt hour
     */
    public record Tariff(String currency, double perKilowattHour) {
        public Tariff {
            Check.name("currency", currency);
            Check.notNegative("electricityPerKwh", perKilowattHour);
        }
    }
}
