package slabfield.cli;

import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;

/** One run of the command line in this process. */
record Ran(int code, String out, String err) {
    static Ran of(String... args) {
        return withInput("", args);
    }

    static Ran withInput(String input, String... args) {
        StringWriter out = new StringWriter(), err = new StringWriter();
        int code = CommandLineFace.run(
                new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)),
                new PrintWriter(out),
                new PrintWriter(err),
                args);
        return new Ran(code, out.toString(), err.toString());
    }
}
