package slabfield.fuzz;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import slabfield.io.CsvCell;
import slabfield.io.ExampleScenarios;
import slabfield.io.FanCsv;
import slabfield.io.PictureFile;
import slabfield.io.ReadingsCsv;
import slabfield.io.RecordFile;
import slabfield.io.RecoveryFolder;
import slabfield.io.ScenarioProblems;
import slabfield.io.ScenarioReader;
import slabfield.io.ScenarioWriter;
import slabfield.model.Scenario;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;
import slabfield.safety.Answer;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobRecord;
import slabfield.safety.RadonTest;

/** What is fed with damaged input: what it is, its samples, and what a good answer is. */
enum Target {
    SCENARIO("scenario files", 12) {
        @Override
        boolean accepts(byte[] bytes, Path scratch) throws ScenarioProblems {
            Scenario read = ScenarioReader.read(text(bytes), "fuzz");
            if (!ScenarioReader.read(ScenarioWriter.toJson(read), "written").equals(read))
                throw new AssertionError("written and read back it is another house");
            return true;
        }

        @Override
        List<byte[]> samples() throws IOException {
            return files("scenarios", ".json");
        }
    },
    RECORD("job records", 12) {
        @Override
        boolean accepts(byte[] bytes, Path scratch) throws ScenarioProblems {
            JobRecord read = RecordFile.read(text(bytes), "fuzz");
            if (!RecordFile.read(RecordFile.toJson(read), "written").equals(read))
                throw new AssertionError("written and read back it is another record");
            return true;
        }

        @Override
        List<byte[]> samples() {
            LocalDateTime time = LocalDateTime.parse("2026-01-20T14:05");
            DraftTest test = new DraftTest(
                    "water heater",
                    true,
                    DraftTest.Outcome.FAILED,
                    Map.of(DraftStep.SHUT, Answer.YES),
                    OptionalDouble.of(-3.5),
                    OptionalDouble.of(-2),
                    OptionalDouble.of(20),
                    OptionalDouble.of(15.5),
                    "B",
                    time,
                    "windy");
            GateAnswer answer = new GateAnswer(Answer.YES, "A", time, "marked in red");
            JobRecord record = new JobRecord(
                    "House",
                    Map.of(Gate.UTILITIES, answer),
                    List.of(test),
                    Optional.of(time),
                    List.of(new RadonTest(time.plusDays(2), "1.2 pCi/L")),
                    Optional.empty());
            return List.of(bytes(RecordFile.toJson(record)));
        }
    },
    QUANTITY("quantities", 35) {
        @Override
        boolean accepts(byte[] bytes, Path scratch) {
            String text = text(bytes);
            boolean any = false;
            for (Dimension dimension : Dimension.values()) any |= isRead(text, dimension);
            CsvCell.of(text);
            return any;
        }

        private boolean isRead(String text, Dimension dimension) {
            try {
                double value = Quantity.parse(text, dimension);
                if (!Double.isFinite(value)) throw new AssertionError("a value that is not finite: " + value);
                Quantity.format(value, Unit.of(dimension).get(0), 4);
                return true;
            } catch (NotAQuantity refused) {
                return false;
            }
        }

        @Override
        List<byte[]> samples() {
            return Stream.of(
                            "12 ft 6 1/2 in",
                            "-5 Pa",
                            "0.020 inH2O",
                            "1.234,5 m3/h",
                            "80 cfm",
                            "1e-9 m2",
                            "95 %",
                            "12'6 1/2\"",
                            "\u2212 3,5 \u00b5m",
                            "20 \u00b0C",
                            "4 Pa/m",
                            "1/8 in",
                            "1,234 ft",
                            "\u00bd in",
                            "0.3 m/(s Pa)")
                    .map(Target::bytes)
                    .toList();
        }
    },
    FAN_TABLE("fan tables (CSV)", 12) {
        @Override
        boolean accepts(byte[] bytes, Path scratch) throws ScenarioProblems, IOException {
            FanCsv.read(Files.write(scratch.resolve("fan.csv"), bytes));
            return true;
        }

        @Override
        List<byte[]> samples() {
            return List.of(
                    bytes("flow cfm, rise inH2O, power W\n0, 1.6, 60\n40, 1.2, 62\n80, 0.7, 64\n120, 0, 60\n"),
                    bytes("\ufeffFlow (m3/h);Rise [Pa]\r\n0;400,5\r\n100;210\r\n200;0\r\n"));
        }
    },
    READINGS("tables of readings (CSV)", 10) {
        @Override
        boolean accepts(byte[] bytes, Path scratch) throws ScenarioProblems {
            Scenario read = ReadingsCsv.into(house(), Optional.of("first"), text(bytes), "fuzz");
            ReadingsCsv.text(read.stages(), false);
            return true;
        }

        @Override
        List<byte[]> samples() throws IOException {
            List<byte[]> all = new ArrayList<>();
            for (boolean comma : new boolean[] {false, true}) all.add(bytes(ReadingsCsv.text(house().stages(), comma)));
            return all;
        }

        private Scenario house() {
            return ExampleScenarios.all().get(0).scenario();
        }
    },
    PICTURE("pictures", 12) {
        @Override
        boolean accepts(byte[] bytes, Path scratch) throws IOException {
            Path file = Files.write(scratch.resolve("picture"), bytes);
            try {
                PictureFile.Picture usable = PictureFile.read(file);
                if ((long) usable.width() * usable.height() <= DECODED) decode(usable);
            } catch (IOException refused) {
                return false;
            }
            return true;
        }

        /** The size that was promised is the size that comes, where the decoder takes the picture at all. */
        private void decode(PictureFile.Picture usable) {
            try {
                var image = ImageIO.read(new ByteArrayInputStream(usable.bytes()));
                if (image != null && (image.getWidth() != usable.width() || image.getHeight() != usable.height()))
                    throw new AssertionError("the picture is larger than its header says");
            } catch (IOException | RuntimeException refusedByTheDecoder) {
                return;
            }
        }

        @Override
        List<byte[]> samples() throws IOException {
            return SamplePictures.all();
        }
    },
    RECOVERY("recovery files", 7) {
        @Override
        boolean accepts(byte[] bytes, Path scratch) throws IOException, ScenarioProblems {
            Path folder = Files.createDirectories(scratch.resolve("recovery"));
            Files.write(folder.resolve("a.recovery.json"), bytes);
            RecoveryFolder recovery = new RecoveryFolder(folder);
            Optional<RecoveryFolder.Leftover> left =
                    recovery.leftovers().stream().findFirst();
            recovery.window().isOpenElsewhere(folder);
            if (left.isEmpty()) return false;
            left.get().scenario();
            return true;
        }

        @Override
        List<byte[]> samples() throws IOException {
            return List.of(
                    bytes("{\"slabfieldRecovery\": 1, \"process\": 999999999, \"started\": \"2026-01-20T10:00:00Z\","
                            + " \"time\": \"2026-01-20T11:00:00Z\", \"file\": \"/home/user/house.json\", \"scenario\": "
                            + text(files("scenarios", ".json").get(0)) + "}"));
        }
    };

    private static final long DECODED = 200_000;
    private static final Pattern WORD =
            Pattern.compile("\"[^\"\\n]{0,40}\"|[A-Za-z]{1,20}|[{}\\[\\],:;]|-?\\d[\\d.eE]*");
    private final String words;
    private final int share;

    Target(String words, int share) {
        this.words = words;
        this.share = share;
    }

    /** How a table calls it. */
    String words() {
        return words;
    }

    /** Part of all inputs that goes to it, in hundredths. */
    int share() {
        return share;
    }

    abstract List<byte[]> samples() throws IOException;

    /**
     * Feeds one input.
     *
     * @return whether it was taken for good
     * @throws ScenarioProblems where it was refused in words
     */
    abstract boolean accepts(byte[] bytes, Path scratch) throws ScenarioProblems, IOException;

    /** The words that stand in the samples. */
    List<String> dictionary() throws IOException {
        List<String> all = new ArrayList<>(List.of("{", "}", "null"));
        for (byte[] sample : samples())
            WORD.matcher(new String(sample, StandardCharsets.ISO_8859_1))
                    .results()
                    .limit(3000)
                    .forEach(m -> all.add(m.group()));
        return all.stream().distinct().toList();
    }

    private static List<byte[]> files(String folder, String ending) throws IOException {
        List<byte[]> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of(folder))) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(ending)).sorted().toList())
                all.add(Files.readAllBytes(file));
        }
        return all;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Bytes as a reader of files would decode them, with a mark in place of what is no text. */
    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }
}
