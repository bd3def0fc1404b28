// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.SweepPoint;

class SetupWordsTest {
    private static final double EXACT = 1e-9;
    private static final String STEP = "stereo-4ohm-14V4";
    private static final String BRIDGED = "bridged-4ohm-14V4";

    @TempDir
    private static Path folder;

    private static Path project;

    @BeforeAll
    static void replayTwoSteps() throws Exception {
        project = BenchWords.project(folder);
        Path recordings = BenchWords.recordings(folder, List.of(STEP, BRIDGED));
        BenchWords ran =
                BenchWords.run(new BuiltPlugins(), "run", project.toString(), "--replay", recordings.toString());
        assertEquals(0, ran.exitCode(), ran.err());
    }

    private static BenchWords words(String words) {
        return BenchWords.run(new BuiltPlugins(), words.split(" "));
    }

    private static BenchWords onProject(String words) {
        return words(words.replace("PROJECT", project.toString()));
    }

    @Test
    void theSetUpOfATypedEndPointIsThatOfItsClosedForm() {
        BenchWords ran =
                words("setup gain --full-scale-volts 5 --overlap-db 10 --power-watts 100 --load-ohms 4 --json");
        assertEquals(0, ran.exitCode(), ran.err());
        JsonNode root = ran.json();
        // Closed form: 5 V x 10^(-10 / 20); 20 log10(sqrt(100 x 4) / that); 10 dB are ten times the power.
        assertEquals(1.581139, root.path("sensitivityVoltsRms").doubleValue(), 5e-7);
        assertEquals(-10, root.path("endPointDbfs").doubleValue(), EXACT);
        assertEquals(22.0412, root.path("gainDb").doubleValue(), 5e-5);
        assertEquals(20, root.path("outputVoltsRms").doubleValue(), EXACT);
        // Closed form: 0 dBV are 2.218487 dBu.
        assertEquals(
                2.218487,
                root.path("sensitivityDbu").doubleValue()
                        - root.path("sensitivityDbv").doubleValue(),
                5e-7);
        assertEquals(1000, root.path("fullScale").path("powerWatts").doubleValue(), 1e-6);
        assertTrue(root.path("fullScale").path("clips").booleanValue());
        assertEquals(2, root.path("check").path("outputVoltsRms").doubleValue(), EXACT);
        assertEquals(-30, root.path("check").path("sourceLevelDbfs").doubleValue(), EXACT);
        assertTrue(root.path("cautions").toString().contains("loudspeakers off"), ran.out());
        assertFalse(root.has("present"));
    }

    @ParameterizedTest
    @CsvSource({
        // Closed form: 20 log10(sqrt(P R) / V_in).
        "100, 4, 2, 20",
        "500, 2, 4, 17.9588",
        "75, 4, 0.2, 38.7506"
    })
    void theGainIsOutputOverInput(String watts, String ohms, String volts, double gainDb) {
        JsonNode root = words("setup gain --full-scale-volts " + volts + " --overlap-db 0 --power-watts " + watts
                        + " --load-ohms " + ohms + " --json")
                .json();
        assertEquals(gainDb, root.path("gainDb").doubleValue(), 5e-5);
    }

    @Test
    void bridgedEachChannelSeesHalfTheLoad() {
        BenchWords ran =
                words("setup gain --full-scale-volts 2 --overlap-db 0 --power-watts 400 --load-ohms 4 --bridged");
        assertEquals(0, ran.exitCode(), ran.err());
        assertTrue(ran.out().matches("(?s).*gain to set +26\\.02  dB.*"), ran.out());
        assertTrue(ran.out().matches("(?s).*of each channel +20\\.00  dB.*"), ran.out());
        assertTrue(ran.out().matches("(?s).*load that each channel sees +2\\.00  \u03a9.*"), ran.out());
        assertTrue(ran.out().contains("neither terminal of the load is ground"), ran.out());
    }

    @Test
    void aTypedPresentGainIsToldHowToChange() {
        BenchWords ran = words("setup gain --full-scale-volts 5 --power-watts 100 --load-ohms 4 --gain-db 26.0412");
        assertEquals(0, ran.exitCode(), ran.err());
        assertTrue(ran.out().contains("With it the overlap is 14.00 dB. Turn the gain down by 4 dB."), ran.out());
    }

    @Test
    void aSourceThatIsTooWeakFallsShort() {
        BenchWords ran = words("setup gain --full-scale-volts 1 --overlap-db -3 --power-watts 100 --load-ohms 4");
        assertEquals(1, ran.exitCode(), ran.err());
        assertTrue(ran.out().contains("The source lacks 3 dB"), ran.out());
        BenchWords early = words("setup gain --full-scale-volts 5 --power-watts 100 --load-ohms 4 --clip-watts 50");
        assertEquals(1, early.exitCode(), early.err());
        assertTrue(early.out().contains("3.01 dB beyond clipping"), early.out());
    }

    @Test
    void aProjectGivesTheRatingAndItsReadingsThePresentGain() throws Exception {
        BenchWords ran = onProject("setup gain PROJECT --full-scale-volts 2 --json");
        assertEquals(0, ran.exitCode(), ran.err());
        JsonNode root = ran.json();
        // The demo's first rating: 90 W in 4 ohm, sqrt(360) V.
        assertEquals("4-ohm", root.path("rating").textValue());
        assertEquals(Math.sqrt(360), root.path("outputVoltsRms").doubleValue(), EXACT);
        JsonNode present = root.path("present");
        assertEquals("R0001", present.path("entry").textValue());
        // The lowest level of the sweep is clean: its volts over the source's are the gain, within a tenth of a dB.
        SweepPoint lowest = BenchWords.log(project)
                .get(0)
                .reading()
                .orElseThrow()
                .channels()
                .get(0)
                .sweep()
                .get(0);
        double gainDb = 20 * Math.log10(lowest.outputVoltsRms() / (2 * Math.pow(10, lowest.driveDb() / 20)));
        assertEquals(gainDb, present.path("gainDb").doubleValue(), 0.1);
        // The meter's bound of 0.4 % and 5 mV, taken as rectangular (GUM 4.3.7), is 0.02 dB at least.
        assertTrue(present.path("standardUncertaintyDb").doubleValue() > 0.02, ran.out());
        assertTrue(present.path("standardUncertaintyDb").doubleValue() < 0.1, ran.out());
        assertEquals(
                root.path("gainDb").doubleValue() - present.path("gainDb").doubleValue(),
                present.path("changeDb").doubleValue(),
                EXACT);
        // A source of twice the volts: 6.0206 dB less gain out of the same readings.
        JsonNode doubled =
                onProject("setup gain PROJECT --full-scale-volts 4 --json").json();
        assertEquals(
                6.020600,
                present.path("gainDb").doubleValue()
                        - doubled.path("present").path("gainDb").doubleValue(),
                5e-7);
    }

    @Test
    void aBridgedRatingTakesTheGainOfABridgedReading() {
        BenchWords ran = onProject("setup gain PROJECT --full-scale-volts 2 --rating bridged-4-ohm");
        assertEquals(0, ran.exitCode(), ran.err());
        assertTrue(ran.out().startsWith("Rating bridged-4-ohm: 1 x 350 W"), ran.out());
        assertTrue(ran.out().contains("(" + BRIDGED + "), channel A+B"), ran.out());
    }

    @Test
    void theBenchOfARunTellsTheVoltsOfItsSource() throws Exception {
        Path other = BenchWords.project(folder.resolve("run"));
        BenchWords measured = BenchWords.run(
                new BuiltPlugins(), "run", other.toString(), "--driver", "simulated", "--step", STEP, "--yes");
        assertEquals(0, measured.exitCode(), measured.err());
        JsonNode root = words("setup gain " + other + " --json").json();
        // The simulated source's full output unless it is set otherwise.
        assertEquals(2, root.path("fullScaleVoltsRms").doubleValue(), EXACT);
        assertTrue(root.has("present"), root.toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "setup gain --power-watts 100 --load-ohms 4|give them with --full-scale-volts",
                "setup gain --full-scale-volts 5|The end point is missing",
                "setup gain --full-scale-volts 5 --power-watts 100|needs both --power-watts and --load-ohms",
                "setup gain --full-scale-volts 5 --power-watts 100 --load-ohms 0|--load-ohms is 0",
                "setup gain --full-scale-volts 5 --power-watts 100 --load-ohms 4 --check-db 3|--check-db is 3",
                "setup gain --full-scale-volts 5 --power-watts 1 --load-ohms 4 --rating a|leave --rating, or",
                "setup gain PROJECT --full-scale-volts 5 --rating none|It has: 4-ohm, 2-ohm",
                "setup gain PROJECT --full-scale-volts 5 --bridged|name a bridged rating",
                "setup gain PROJECT|What the source gives at full scale is not known",
                "setup match|The readings are missing",
                "setup match 20|There are 1 readings; give 2 to 16",
                "setup match 20 0|the reading of channel B is 0",
                "setup match 20 19 --project PROJECT|Both volts and --project"
            })
    void whatCannotBeAnsweredIsSaidWithWhatToDo(String line, String sentence) {
        BenchWords ran = onProject(line);
        assertEquals(3, ran.exitCode(), ran.out());
        assertTrue(ran.err().contains(sentence), ran.err());
    }

    @Test
    void channelsAreComparedByTheirVolts() {
        BenchWords ran = words("setup match 20.0 19.5 --json");
        assertEquals(0, ran.exitCode(), ran.err());
        // Closed form: 20 log10(20 / 19.5) and its power ratio.
        assertEquals(0.219908, ran.json().path("spreadDb").doubleValue(), 5e-7);
        assertEquals(1.051940, ran.json().path("powerRatio").doubleValue(), 5e-7);
        assertEquals("A", ran.json().path("loudest").textValue());
        assertTrue(ran.json().path("matched").booleanValue());
        BenchWords strict = words("setup match 20.0 19.5 --tolerance-db 0.2");
        assertEquals(1, strict.exitCode(), strict.err());
        assertTrue(strict.out().contains("Turn A down or B up."), strict.out());
        assertTrue(strict.out().matches("(?s).*B +19\\.50 +-0\\.220.*"), strict.out());
    }

    @Test
    void theChannelsOfAReadingAreComparedAtACleanLevel() throws Exception {
        BenchWords ran = onProject("setup match --project PROJECT --json");
        assertEquals("R0001", ran.json().path("entry").textValue(), ran.err());
        double first = ran.json().path("channels").get(0).path("voltsRms").doubleValue();
        double second = ran.json().path("channels").get(1).path("voltsRms").doubleValue();
        assertEquals(
                20 * Math.log10(second / first),
                ran.json().path("channels").get(1).path("differenceDb").doubleValue(),
                EXACT);
        assertTrue(onProject("setup match --project PROJECT").out().startsWith("Reading R0001"));
    }
}
