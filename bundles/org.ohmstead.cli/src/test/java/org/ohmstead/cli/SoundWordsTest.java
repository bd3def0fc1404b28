// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;

class SoundWordsTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @TempDir
    private Path folder;

    private int run(String words) {
        out.reset();
        err.reset();
        return Ohmstead.run(words.split(" "), new PrintStream(out), new PrintStream(err));
    }

    private JsonNode json(int exitCode, String words) throws Exception {
        assertEquals(exitCode, run(words + " --json"), output() + errors());
        return new ObjectMapper().readTree(output());
    }

    private String output() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String errors() {
        return err.toString(StandardCharsets.UTF_8);
    }

    private Path tone(String name, double hertz, double share) throws Exception {
        double[] samples = new double[3 * 48_000];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = share * Math.sin(2 * Math.PI * hertz * i / 48_000);
        }
        Path file = folder.resolve(name);
        Capture capture = new Capture(List.of(Waveform.of(48_000, samples)), name, "made");
        WavFile.write(file, capture, 24, new double[] {1});
        return file;
    }

    /** Closed forms: sums of powers, of phasors, and over time. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "85 88 90 | 92.894072",
                "85 85 | 88.0103",
                "70 70 --phases 0,60 | 74.771213",
                "100 94 --minutes 15,45 | 96.418621"
            })
    void sums(String words, double expectedDb) throws Exception {
        assertEquals(expectedDb, json(0, "sound sum " + words).path("sumDb").doubleValue(), 1e-6);
    }

    @Test
    void takesABackgroundOff() throws Exception {
        assertEquals(
                63.349115,
                json(0, "sound sum 65 --background 60")
                        .path("withoutBackgroundDb")
                        .doubleValue(),
                1e-6);
        assertEquals(3, run("sound sum 60 --background 65"));
        assertTrue(errors().contains("nothing of the source stands out"), errors());
        assertEquals(3, run("sound sum 60 60 --phases 0,180"));
        assertEquals(3, run("sound sum 60 60 --phases 0"));
        assertTrue(errors().contains("give one for each"), errors());
    }

    @Test
    void tellsWhatPowerChanges() throws Exception {
        JsonNode found = json(0, "sound change --from-watts 100 --to-watts 50 --sensitivity-db 88 --metres 1");
        assertEquals(-3.0103, found.path("changeDb").doubleValue(), 5e-5);
        assertEquals(104.9897, found.path("freeFieldDb").doubleValue(), 5e-5);
        assertEquals(0, run("sound change --from-watts 80 --to-watts 100"));
        assertTrue(output().contains("0.97 dB (10 lg P2/P1), hardly heard"), output());
        assertEquals(3, run("sound change --to-watts 100"));
    }

    /** NIOSH 98-126, table 1-1: 15 min at 100 dBA; 29 CFR 1910.95: 2 h; the directive by equal energy: 4.8 min to 80 dB(A). */
    @Test
    void cautionsAboutExposure() throws Exception {
        JsonNode found = json(1, "sound exposure --level-dba 100 --minutes 10 --peak-dbc 136");
        JsonNode criteria = found.path("criteria");
        assertEquals(900, criteria.get(0).path("seconds").doubleValue(), 1e-6);
        assertFalse(criteria.get(0).path("passed").booleanValue());
        assertEquals(288, criteria.get(1).path("seconds").doubleValue(), 1e-6);
        assertTrue(criteria.get(1).path("passed").booleanValue());
        assertEquals(7200, criteria.get(4).path("seconds").doubleValue(), 1e-6);
        assertEquals(0, run("sound exposure --level-dba 100"));
        assertTrue(output().contains("15 min"), output());
        assertTrue(output().contains("not levels to aim at"), output());
        assertTrue(output().contains("Local rules and qualified people decide."), output());
        assertTrue(output().contains("29 CFR 1910.95"), output());
    }

    /** A tenth of the calibrator's pressure is 20 dB less; at 100 Hz A-weighted 19.14 dB less again (IEC 61672-1). */
    @Test
    void measuresARecording() throws Exception {
        Path calibrator = tone("tone94.wav", 1000, 0.1);
        Path wave = tone("seat.wav", 100, 0.5);
        JsonNode found = json(0, "sound level " + wave + " --calibration " + calibrator);
        double plainDb = 94 + 20 * Math.log10(5);
        assertEquals(plainDb - 19.1428, found.path("equivalentDb").doubleValue(), 0.005);
        assertEquals(0.4 / Math.sqrt(3), found.path("standardUncertaintyDb").doubleValue(), 1e-3);
        assertEquals(plainDb - 0.2996 + 3.0103, found.path("peakCDb").doubleValue(), 0.01);
        assertEquals(0, run("sound level " + wave + " --calibration " + calibrator + " --weighting Z --bands"));
        assertTrue(output().contains("108.0"), output());
        assertTrue(output().contains("reaches the daily criterion of NIOSH 1998"), output());
        assertEquals(3, run("sound level " + wave + " --calibration " + wave));
        assertTrue(errors().contains("no tone within 2 %"), errors());
        assertEquals(3, run("sound level " + wave));
        assertTrue(errors().contains("without one of them a recording has no level"), errors());
        assertEquals(3, run("sound level " + wave + " --pascals-per-full-scale 20 --channel 2"));
        assertEquals(1, run("sound level " + tone("loud.wav", 100, 0.99999) + " --pascals-per-full-scale 20"));
        assertTrue(output().contains("true levels are higher"), output());
    }

    @Test
    void keepsAndComparesSeries() throws Exception {
        Path before = folder.resolve("before.csv");
        Path after = folder.resolve("after.csv");
        for (int drive = -30; drive <= 0; drive += 10) {
            double share = 0.3 * Math.pow(10, drive / 20.0);
            Path file = tone("d.wav", 50, share);
            String words =
                    "sound level " + file + " --pascals-per-full-scale 20 --weighting C --frequency-hz 50 --drive-db "
                            + drive + " --position seat";
            assertEquals(0, run(words + " --into " + before), errors());
            // 3 dB less at full drive: it falls short.
            Path less = tone("e.wav", 50, drive == 0 ? share / Math.sqrt(2) : share);
            assertEquals(0, run(words.replace(file.toString(), less.toString()) + " --into " + after), errors());
        }
        JsonNode shown = json(0, "sound show " + before);
        assertEquals(4, shown.path("points").size());
        assertTrue(shown.path("drives").get(0).path("fallsShortFromDriveDb").isMissingNode());
        assertEquals(
                0,
                json(1, "sound show " + after)
                        .path("drives")
                        .get(0)
                        .path("fallsShortFromDriveDb")
                        .doubleValue());
        JsonNode compared = json(0, "sound compare " + before + " " + after);
        JsonNode last = compared.path("differences").get(3);
        assertEquals(-3.0103, last.path("changeDb").doubleValue(), 0.002);
        assertEquals(0, run("sound compare " + before + " " + after));
        assertTrue(output().contains("They name no common meter"), output());
        assertEquals(0, run("sound show " + before));
        assertTrue(output().contains("the level rises as the drive does"), output());
        Files.writeString(folder.resolve("other.csv"), "a,b\n");
        assertEquals(3, run("sound show " + folder.resolve("other.csv")));
        assertTrue(errors().contains("is no series of sound levels"), errors());
    }
}
