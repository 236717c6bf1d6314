package slabfield.report;

import java.util.List;

/** The documents that a report can hold. */
public enum ReportKind {
    /** What is planned and why: everything in it is predicted. */
    DESIGN("Design record"),
    /** What was read at each stage, beside what was expected. */
    TEST("Test record"),
    /** What was checked and read when the fan was started, and what follows. */
    START_UP("Start-up record"),
    /** One page in plain words for those who live there. */
    HOUSEHOLDER("Your radon system");

    private final String title;

    ReportKind(String title) {
        this.title = title;
    }

    public String title() {
        return title;
    }

    List<Block> blocks(Job job, Numbers numbers) {
        return switch (this) {
            case DESIGN -> new DesignRecord(job, numbers).blocks();
            case TEST -> new TestRecord(job, numbers).blocks();
            case START_UP -> new StartUpRecord(job, numbers).blocks();
            case HOUSEHOLDER -> new HouseholderSheet(job, numbers).blocks();
        };
    }
}
