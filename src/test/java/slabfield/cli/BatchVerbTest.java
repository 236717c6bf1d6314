package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.Main;

/** Many houses at once, with a process that is killed half way. */
class BatchVerbTest {
    private static final int HOUSES = 200;

    @TempDir
    private Path folder;

    private record Run(int code, String out, String err) {}

    private static Run run(String... args) {
        StringWriter out = new StringWriter(), err = new StringWriter();
        int code = CommandLineFace.run(
                new ByteArrayInputStream(new byte[0]), new PrintWriter(out), new PrintWriter(err, true), args);
        return new Run(code, out.toString(), err.toString());
    }

    private Path houses(int number) throws IOException {
        Path in = Files.createDirectories(folder.resolve("in"));
        for (int i = 0; i < number; i++)
            Files.writeString(
                    in.resolve(String.format(Locale.ROOT, "house-%03d.json", i)),
                    String.format(Locale.ROOT, """
                    { "slabfield": 1, "name": "House %d", "lengthUnit": "m", "cell": "40 cm",
                      "slabs": [{ "id": "basement", "outline": [[0, 0], [6, 0], [6, 4], [0, 4]] }],
                      "layer": { "fill": "sand", "permeability": "%de-10 m2" },
                      "openings": [{ "id": "joint", "perimeterOf": "basement", "width": "1 mm" }],
                      "suctionPoints": [{ "id": "S1", "at": [1, 2], "pit": { "radius": "25 cm" }, "source": { "pressure": "-200 Pa" } }],
                      "testHoles": [{ "id": "T1", "at": [5, 3] }] }
                    """, i, 1 + i));
        return in;
    }

    private static Map<String, byte[]> files(Path place) throws IOException {
        Map<String, byte[]> all = new LinkedHashMap<>();
        try (Stream<Path> inside = Files.list(place).sorted()) {
            for (Path file : inside.toList()) all.put(file.getFileName().toString(), Files.readAllBytes(file));
        }
        return all;
    }

    private static List<Path> finished(Path out) throws IOException {
        if (!Files.isDirectory(out)) return List.of();
        try (Stream<Path> inside = Files.list(out)) {
            return inside.filter(f -> f.toString().endsWith(".done.json"))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void aRunThatIsKilledGoesOnWhereItWas() throws Exception {
        Path in = houses(HOUSES), out = folder.resolve("out");
        Process batch = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "batch",
                        in.toString(),
                        "--out",
                        out.toString(),
                        "--jobs",
                        "1")
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said").toFile())
                .start();
        while (finished(out).size() < HOUSES / 4 && batch.isAlive()) Thread.sleep(2);
        batch.destroyForcibly();
        assertThat(batch.waitFor(20, TimeUnit.SECONDS)).isTrue();
        List<Path> before = finished(out);
        assertThat(before).as("houses done when it was killed").hasSizeBetween(HOUSES / 4, HOUSES - 1);
        Map<Path, FileTime> times = new LinkedHashMap<>();
        for (Path file : before) times.put(file, Files.getLastModifiedTime(file));

        Run again = run("batch", in.toString(), "--out", out.toString());

        assertThat(again.code()).isZero();
        assertThat(again.out())
                .containsPattern("Kept from before +" + before.size() + "\n")
                .containsPattern("Done now +" + (HOUSES - before.size()) + "\n");
        for (Path file : before)
            assertThat(Files.getLastModifiedTime(file))
                    .as("%s is not done twice", file)
                    .isEqualTo(times.get(file));
        assertThat(Files.readAllLines(out.resolve("summary.csv"))).hasSize(HOUSES + 1);

        Path fresh = folder.resolve("fresh");
        assertThat(run("batch", in.toString(), "--out", fresh.toString()).code())
                .isZero();
        Map<String, byte[]> one = files(out), two = files(fresh);
        assertThat(one.keySet()).hasSize(2 * HOUSES + 1).isEqualTo(two.keySet());
        one.forEach((name, bytes) -> assertThat(bytes).as("bytes of %s", name).isEqualTo(two.get(name)));
    }

    @Test
    void aChangedHouseIsDoneAgainAndABrokenOneIsNamed() throws Exception {
        Path in = houses(3), out = folder.resolve("out");
        assertThat(run("batch", in.toString(), "--out", out.toString()).out()).containsPattern("Done now +3\n");
        Files.writeString(
                in.resolve("house-001.json"),
                Files.readString(in.resolve("house-001.json")).replace("-200 Pa", "-100 Pa"));
        Files.writeString(in.resolve("house-002.json"), "{ \"slabfield\": 1 ");
        Run again = run("batch", in.toString(), "--out", out.toString(), "--progress");
        assertThat(again.code()).isEqualTo(Exit.WRONG_INPUT.code());
        assertThat(again.out())
                .containsPattern("Kept from before +1\n")
                .contains("cannot be read")
                .contains("house-002");
        assertThat(again.err()).contains("] 3 of 3, 1 not solved");
    }

    @Test
    void aReportIsWrittenWithEachHouseAndMissedWhenItIsGone() throws Exception {
        Path in = houses(1), out = folder.resolve("out");
        assertThat(run("batch", in.toString(), "--out", out.toString(), "--report")
                        .code())
                .isZero();
        Path report = out.resolve("house-000.report.pdf");
        byte[] first = Files.readAllBytes(report);
        Files.delete(report);
        assertThat(run("batch", in.toString(), "--out", out.toString(), "--report")
                        .out())
                .containsPattern("Done now +1\n");
        assertThat(Files.readAllBytes(report)).isEqualTo(first);
    }

    @Test
    void twoHousesOfOneNameAreRefused() throws Exception {
        Path in = houses(1), other = Files.createDirectories(folder.resolve("other"));
        Files.copy(in.resolve("house-000.json"), other.resolve("house-000.json"));
        Run run = run(
                "batch",
                in.toString(),
                other.toString(),
                "--out",
                folder.resolve("out").toString());
        assertThat(run.code()).isEqualTo(Exit.WRONG_INPUT.code());
        assertThat(run.err()).contains("rename one");
    }

    @Test
    void aHouseWithoutReadingsSaysThatItIsNotFitted() throws Exception {
        Path in = houses(1);
        assertThat(run("batch", in.toString(), "--out", folder.resolve("out").toString(), "--fit")
                        .out())
                .contains("not fitted");
    }
}
