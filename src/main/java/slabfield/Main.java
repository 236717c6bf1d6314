package slabfield;

/** Entry point: with arguments the command line, without them the window. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {}
}
