package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.model.Scenario;
import slabfield.safety.Answer;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobField;
import slabfield.safety.JobRecord;

/** Names, addresses and the places of photos are taken out. The people are invented. */
class PrivacyTest {
    private static final LocalDateTime NOON = LocalDateTime.of(2026, 1, 20, 12, 0);

    private static JobRecord record() {
        JobRecord empty = JobRecord.empty("Quillfeather house");
        JobRecord named =
                empty.with(Gate.UTILITIES, new GateAnswer(Answer.YES, "Orla Quillfeather", NOON, "she showed me"));
        for (JobField field : JobField.values()) named = named.with(field, "Quillfeather");
        return named.with(JobField.MONITOR_MARK, "200 Pa").with(JobField.INSTRUMENTS, "micromanometer");
    }

    private static Scenario scenario(String hole) throws ScenarioProblems {
        String text = SampleFile.SHORT
                .replace("\"name\": \"House\"", "\"name\": \"Quillfeather house\", \"notes\": \"12 Tanglewood Lane\"")
                .replace(
                        "\"layer\": { \"fill\": \"sand\" }",
                        "\"layer\": { \"fill\": \"sand\" }, \"testHoles\": [{ \"id\": \"" + hole
                                + "\", \"at\": [2, 2] }]");
        return ScenarioReader.read(text, "s");
    }

    @Test
    void nothingPersonalIsLeft() throws ScenarioProblems {
        Redaction clean = Redaction.of(
                scenario("T1"),
                record().with(JobField.OUT_OF_RANGE, "call")
                        .with(JobField.WEATHER, "calm")
                        .with(JobField.HOUSE_STATE, "shut")
                        .with(JobField.FLOW_METHOD, "pitot")
                        .with(JobField.PIT, "sand")
                        .with(JobField.PORTS, "T1")
                        .with(JobField.FAN, "attic")
                        .with(JobField.MONITOR, "gauge")
                        .with(JobField.ELECTRICAL, "attic")
                        .with(JobField.DISCHARGE_AT, "roof")
                        .with(JobField.LABELS, "yes")
                        .with(JobField.INSPECTION, "yearly")
                        .with(JobField.RADON_BEFORE, "500")
                        .with(JobField.BUILT, "1970"));
        String all = ScenarioWriter.toJson(clean.scenario()) + RecordFile.toJson(clean.record());
        assertThat(all)
                .doesNotContainIgnoringCase("quillfeather")
                .doesNotContain("Tanglewood")
                .doesNotContain("showed me");
        assertThat(clean.left()).isEmpty();
        assertThat(clean.record().detail(JobField.MONITOR_MARK)).contains("200 Pa");
        assertThat(clean.record().answer(Gate.UTILITIES))
                .map(GateAnswer::answer)
                .contains(Answer.YES);
        assertThat(clean.scenario().testHoles()).extracting(h -> h.id()).containsExactly("T1");
    }

    @Test
    void aNameInTheNameOfAHoleIsReported() throws ScenarioProblems {
        Redaction clean = Redaction.of(
                scenario("QUILLFEATHER'S bath"), JobRecord.empty("x").with(JobField.CLIENT, "O. Quillfeather"));
        assertThat(clean.left()).containsExactly("QUILLFEATHER'S bath");
    }

    private static byte[] photo(String kind) throws IOException {
        BufferedImage image = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 40; i++) for (int j = 0; j < 30; j++) image.setRGB(i, j, i * 6 << 16 | j * 8);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, kind, out);
        return out.toByteArray();
    }

    /** A JPEG with Exif that holds an orientation and a GPS directory, XMP, a comment, and something hung on at the end. */
    private static byte[] located(String order) throws IOException {
        byte[] plain = photo("jpg");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(plain, 0, 2);
        boolean little = order.equals("II");
        byte[] big = {
            0x4D,
            0x4D,
            0,
            42,
            0,
            0,
            0,
            8,
            0,
            2,
            1,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            6,
            0,
            0,
            (byte) 0x88,
            0x25,
            0,
            4,
            0,
            0,
            0,
            1,
            0,
            0,
            0,
            40,
            0,
            0,
            0,
            0
        };
        byte[] small = {
            0x49,
            0x49,
            42,
            0,
            8,
            0,
            0,
            0,
            2,
            0,
            0x12,
            1,
            3,
            0,
            1,
            0,
            0,
            0,
            6,
            0,
            0,
            0,
            0x25,
            (byte) 0x88,
            4,
            0,
            1,
            0,
            0,
            0,
            40,
            0,
            0,
            0,
            0,
            0,
            0,
            0
        };
        segment(
                out,
                0xE1,
                joined(
                        "Exif\0\0".getBytes(StandardCharsets.ISO_8859_1),
                        joined(little ? small : big, "GPS 51.5N SERIAL123".getBytes(StandardCharsets.ISO_8859_1))));
        segment(
                out,
                0xE1,
                "http://ns.adobe.com/xap/1.0/\0<GPSLatitude>51</GPSLatitude>".getBytes(StandardCharsets.ISO_8859_1));
        segment(out, 0xFE, "owner".getBytes(StandardCharsets.ISO_8859_1));
        out.write(plain, 2, plain.length - 2);
        out.writeBytes("MOTION GPS".getBytes(StandardCharsets.ISO_8859_1));
        return out.toByteArray();
    }

    private static byte[] joined(byte[] a, byte[] b) {
        byte[] all = java.util.Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return all;
    }

    private static void segment(ByteArrayOutputStream out, int kind, byte[] content) {
        out.write(0xFF);
        out.write(kind);
        out.write((content.length + 2) >> 8);
        out.write((content.length + 2) & 0xFF);
        out.writeBytes(content);
    }

    @ParameterizedTest
    @ValueSource(strings = {"MM", "II"})
    void aJpegLosesItsPlaceAndKeepsItsPictureAndWhichSideIsUp(String order) throws Exception {
        byte[] clean = PhotoPrivacy.stripped(located(order));
        String text = new String(clean, StandardCharsets.ISO_8859_1);
        assertThat(text)
                .doesNotContain("GPS")
                .doesNotContain("owner")
                .doesNotContain("SERIAL")
                .doesNotContain("ns.adobe");
        assertThat(text).contains("Exif").contains("\u0001\u0012\0\u0003\0\0\0\u0001\0\u0006");
        BufferedImage before = ImageIO.read(new ByteArrayInputStream(photo("jpg"))),
                after = ImageIO.read(new ByteArrayInputStream(clean));
        for (int i = 0; i < 40; i++)
            for (int j = 0; j < 30; j++) assertThat(after.getRGB(i, j)).isEqualTo(before.getRGB(i, j));
    }

    @Test
    void anUprightJpegGetsNoExifAtAll() throws Exception {
        assertThat(new String(PhotoPrivacy.stripped(photo("jpg")), StandardCharsets.ISO_8859_1))
                .doesNotContain("Exif");
    }

    @Test
    void aPngLosesItsTexts() throws Exception {
        byte[] plain = photo("png");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(plain, 0, 33);
        byte[] chunk = "eXIfGPS 51.5N".getBytes(StandardCharsets.ISO_8859_1);
        CRC32 sum = new CRC32();
        sum.update(chunk);
        out.writeBytes(java.nio.ByteBuffer.allocate(4).putInt(chunk.length - 4).array());
        out.writeBytes(chunk);
        out.writeBytes(
                java.nio.ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
        out.write(plain, 33, plain.length - 33);
        assertThat(PhotoPrivacy.stripped(out.toByteArray())).isEqualTo(plain);
    }

    @Test
    void whatCannotBeCleanedIsRefused() {
        assertThatThrownBy(() -> PhotoPrivacy.stripped("a HEIC, say".getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(PhotoPrivacy.Unclean.class)
                .hasMessageContaining("neither JPEG nor PNG");
        assertThatThrownBy(() ->
                        PhotoPrivacy.stripped(new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xE1, 0x7F}))
                .isInstanceOf(PhotoPrivacy.Unclean.class);
    }

    @Test
    void optionalsStayEmpty() {
        assertThat(Redaction.of(anyScenario(), JobRecord.empty("x")).record().startUp())
                .isEqualTo(Optional.empty());
        assertThat(Redaction.of(anyScenario(), JobRecord.empty("x")).record().details())
                .isEqualTo(Map.of());
        assertThat(Redaction.of(anyScenario(), JobRecord.empty("x")).left()).isEqualTo(List.of());
    }

    private static Scenario anyScenario() {
        try {
            return scenario("T1");
        } catch (ScenarioProblems e) {
            throw new AssertionError(e);
        }
    }
}
