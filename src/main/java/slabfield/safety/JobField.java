package slabfield.safety;

/** What a record of the job holds in the user's own words. Nothing is worked out from any of it. */
public enum JobField {
    HOUSE("house", "House or file number", Part.HOUSE, true),
    ADDRESS("address", "Address", Part.HOUSE, true),
    CLIENT("client", "Client", Part.HOUSE, true),
    BUILT("built", "Year built, additions", Part.HOUSE, false),
    CONTRACTOR("contractor", "Contractor, licence number", Part.HOUSE, true),
    CALL("call", "Whom to call", Part.HOUSE, true),
    TESTER("tester", "Tests made by", Part.CONDITIONS, true),
    WEATHER("weather", "Outdoor temperature, wind", Part.CONDITIONS, false),
    HOUSE_STATE("house state", "Heating, exhausts, doors; closed-building conditions", Part.CONDITIONS, false),
    INSTRUMENTS("instruments", "Instruments, smallest step, last calibration, zero check", Part.CONDITIONS, false),
    FLOW_METHOD("flow method", "How flow was measured", Part.CONDITIONS, false),
    PIT("pit", "Pit size and soil found", Part.CONDITIONS, false),
    UTILITIES_BY("utilities by", "Utilities located by, when", Part.CONDITIONS, true),
    PORTS("ports", "Test holes kept as ports, and those sealed", Part.SYSTEM, false),
    FAN("fan", "Fan built in, where", Part.SYSTEM, false),
    MONITOR("monitor", "Monitor and alarm: kind, where", Part.SYSTEM, false),
    MONITOR_MARK("monitor mark", "Value marked on the monitor at start-up", Part.SYSTEM, false),
    ELECTRICAL("electrical", "Disconnect and circuit, where", Part.SYSTEM, false),
    DISCHARGE_AT("discharge at", "Where the air leaves", Part.SYSTEM, false),
    LABELS("labels", "Labels put up", Part.SYSTEM, false),
    OUT_OF_RANGE("out of range", "What the client does if the monitor moves", Part.HANDOVER, false),
    INSPECTION("inspection", "How often the system is looked at", Part.HANDOVER, false),
    PAPERS("papers", "Contract, permits, warranty", Part.HANDOVER, true),
    RADON_BEFORE("radon before", "Radon measured before the work: value, device, dates, place", Part.HANDOVER, false),
    NOTES("notes", "Notes", Part.HANDOVER, true);

    /** Where in a record a field stands. */
    public enum Part {
        HOUSE,
        CONDITIONS,
        SYSTEM,
        HANDOVER
    }

    private final String word;
    private final String label;
    private final Part part;
    private final boolean personal;

    JobField(String word, String label, Part part, boolean personal) {
        this.word = word;
        this.label = label;
        this.part = part;
        this.personal = personal;
    }

    /** Its name in files and on the command line. */
    public String word() {
        return word;
    }

    /** What is to be said. */
    public String label() {
        return label;
    }

    public Part part() {
        return part;
    }

    /** True where it may tell who or where somebody is. */
    public boolean personal() {
        return personal;
    }
}
