package slabfield.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LauncherTest {
    @ParameterizedTest
    @CsvSource({"Linux, false", "FreeBSD, false", "Windows 11, true", "Mac OS X, true"})
    void withoutADisplayVariableOnlyWindowsAndMacHaveAScreen(String system, boolean has) {
        assertThat(Launcher.hasScreen(system, Map.of("DISPLAY", " "))).isEqualTo(has);
    }

    @Test
    void eitherDisplayVariableIsEnough() {
        assertThat(Launcher.hasScreen("Linux", Map.of("DISPLAY", ":0"))).isTrue();
        assertThat(Launcher.hasScreen("Linux", Map.of("WAYLAND_DISPLAY", "wayland-0")))
                .isTrue();
    }
}
