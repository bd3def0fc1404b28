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
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThermalWordsTest {
    private static final double ROUNDING = 1e-9;

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

    @Test
    void aCableHasTheResistanceOfTheStandards() throws Exception {
        JsonNode cable = json(0, "thermal cable --square-millimetres 25 --metres 5 --amps 60 --supply-volts 14.4");
        // IEC 60028: 1/58 ohm mm2/m at 20 degrees; IEC 60228 allows 0.780 ohm/km for flexible 25 mm2.
        assertEquals(10.0 / 58 / 25, cable.path("coldOhms").doubleValue(), ROUNDING);
        assertEquals(0.00780, cable.path("highestFlexibleOhms").doubleValue(), ROUNDING);
        JsonNode settled = cable.path("settled");
        double celsius = settled.path("conductorCelsius").doubleValue();
        // IEC 60028: 0.393 % per kelvin.
        double ohms = 10.0 / 58 / 25 * (1 + 0.00393 * (celsius - 20));
        assertEquals(ohms, settled.path("loopOhms").doubleValue(), ROUNDING);
        assertEquals(60 * ohms, settled.path("dropVolts").doubleValue(), ROUNDING);
        assertEquals(3600 * ohms, settled.path("lossWatts").doubleValue(), 1e-6);
        assertEquals(14.4 - 60 * ohms, cable.path("terminalVolts").doubleValue(), ROUNDING);
        assertTrue(celsius > 25 && celsius < 70, String.valueOf(celsius));
        assertTrue(cable.path("unlimited").booleanValue());
        assertTrue(cable.path("continuousAmpsRms").doubleValue() > 60);
        assertEquals(2, cable.path("cautions").size());
    }

    @Test
    void aGaugeIsItsCrossSection() throws Exception {
        // ASTM B258: 12 AWG is 2.053 mm thick.
        JsonNode cable = json(0, "thermal cable --gauge 12 --metres 1 --amps 10");
        assertEquals(
                Math.PI / 4 * 2.053 * 2.053, cable.path("squareMillimetres").doubleValue(), 2e-3);
    }

    @Test
    void theMorePowerIsWantedTheMoreTheCableDrops() throws Exception {
        JsonNode cable = json(0, "thermal cable --square-millimetres 25 --metres 5 --watts 900 --supply-volts 14.4");
        double ohms = cable.path("settled").path("loopOhms").doubleValue();
        // Closed form: the smaller root of V I - R I^2 = P.
        double amps = (14.4 - Math.sqrt(14.4 * 14.4 - 4 * ohms * 900)) / (2 * ohms);
        assertEquals(amps, cable.path("ampsRms").doubleValue(), 1e-6);
        assertEquals(900 / amps, cable.path("terminalVolts").doubleValue(), 1e-6);
    }

    @Test
    void aCableThatGetsTooHotFallsShortAndSaysWhen() {
        assertEquals(1, run("thermal cable --gauge 12 --metres 5 --amps 60"));
        assertTrue(errors().contains("reaches its limit of 70"), errors());
        assertTrue(errors().contains("mm\u00b2 carry it for ever"), errors());
        assertTrue(output().contains("Caution: The heat of a cable"), output());
        assertTrue(output().contains("Local codes"), output());
    }

    @Test
    void moreThanACableCanCarryHasNoSolution() throws Exception {
        JsonNode cable = json(1, "thermal cable --gauge 16 --metres 50 --watts 900 --supply-volts 14.4");
        // Closed form: at most V^2 / (4 R), R at the air's 25 degrees; ASTM B258: 16 AWG is 1.2908 mm thick.
        double area = Math.PI / 4 * 1.2908 * 1.2908;
        double most = 14.4 * 14.4 / 4 / (100.0 / 58 / area * (1 + 0.00393 * 5));
        String reason = cable.path("noSolution").path("reason").textValue();
        assertTrue(reason.contains(String.format(Locale.ROOT, "at most %.1f W", most)), reason);
        assertFalse(cable.path("noSolution").path("remedy").textValue().isBlank());
        assertTrue(errors().contains(reason), errors());
        json(1, "thermal cable --gauge 4 --metres 5 --amps 10 --ambient-celsius 80");
        assertTrue(errors().contains("cooler air"), errors());
    }

    @Test
    void fusesOpenWithinTheBandsOfTheStandards() throws Exception {
        // ISO 8820-3 types C and F: 0.15 s to 5 s at twice the rating.
        JsonNode blade = json(1, "thermal fuse --amps 60 --rated-amps 30");
        assertEquals("opens", blade.path("result").textValue());
        assertEquals(0.15, blade.path("earliestSeconds").doubleValue(), ROUNDING);
        assertEquals(5, blade.path("latestSeconds").doubleValue(), ROUNDING);
        assertTrue(blade.path("citation").textValue().contains("from memory"), blade.toString());
        // UL 248-14: within an hour at 135 % of the rating.
        JsonNode cartridge = json(1, "thermal fuse --amps 27 --rated-amps 20 --kind cartridge");
        assertEquals(3600, cartridge.path("latestSeconds").doubleValue(), 1e-6);
        assertTrue(cartridge.path("earliestSeconds").isMissingNode(), cartridge.toString());
        assertEquals(1, run("thermal fuse --amps 60 --rated-amps 30"));
        assertTrue(output().contains("from memory"), output());
        assertTrue(output().contains("75 % of the rating for ever"), output());
        assertTrue(output().contains("Caution: A fuse protects the cable"), output());
    }

    @Test
    void fusesSideBySideShareTheCurrent() throws Exception {
        JsonNode bank = json(0, "thermal fuse --amps 40 --rated-amps 30 --count 2");
        assertEquals("carries", bank.path("result").textValue());
        assertEquals(40.0 / 60, bank.path("currentRatio").doubleValue(), ROUNDING);
        assertEquals(45, bank.path("continuousAmps").doubleValue(), ROUNDING);
        assertEquals(
                "aboveContinuous",
                json(1, "thermal fuse --amps 25 --rated-amps 30").path("result").textValue());
    }

    @Test
    void burstsCountByTheirRms() throws Exception {
        JsonNode bursts =
                json(0, "thermal fuse --amps 90 --on-seconds 0.02 --period-seconds 0.5 --rated-amps 30 --low-amps 10");
        // Closed form: sqrt(D I1^2 + (1 - D) I2^2) with D = 0.04.
        assertEquals(
                Math.sqrt(0.04 * 8100 + 0.96 * 100) / 30,
                bursts.path("currentRatio").doubleValue(),
                ROUNDING);
        JsonNode one = json(1, "thermal fuse --amps 200 --on-seconds 0.03 --period-seconds 10 --rated-amps 30");
        assertTrue(one.path("withinBurst").booleanValue(), one.toString());
    }

    @Test
    void aPlateCarriesOffItsPower() throws Exception {
        JsonNode plate = json(
                0,
                "thermal sink --length-millimetres 200 --height-millimetres 150 --power-watts 10 --emissivity 0.9"
                        + " --ambient-celsius 20");
        double rise = plate.path("riseKelvin").get(0).doubleValue();
        // Heat transfer textbooks: h = 1.42 (dT/L)^(1/4), here 10 % more, and radiation by Stefan and Boltzmann.
        double hot = 293.15 + rise;
        double radiation = 0.9 * 5.670374419e-8 * (Math.pow(hot, 4) - Math.pow(293.15, 4));
        double convection = 1.1 * 1.42 * Math.pow(rise / 0.15, 0.25) * rise;
        assertEquals(10, 2 * 0.2 * 0.15 * (radiation + convection), 1e-6);
        assertEquals(20 + rise, plate.path("celsius").get(0).doubleValue(), ROUNDING);
        assertEquals(rise / 10, plate.path("kelvinPerWatt").get(0).doubleValue(), ROUNDING);
        assertEquals(
                10,
                plate.path("convectionWatts").doubleValue()
                        + plate.path("radiationWatts").doubleValue(),
                1e-6);
        assertEquals(0, run("thermal sink --length-millimetres 200 --height-millimetres 150 --power-watts 10 --fan"));
        assertTrue(output().contains("25 to 60 %"), output());
        assertTrue(output().contains("Caution: "), output());
    }

    @Test
    void aSinkThatIsFarTooSmallFallsShort() {
        assertEquals(1, run("thermal sink --length-millimetres 20 --height-millimetres 15 --power-watts 60"));
        assertTrue(errors().contains("600 K"), errors());
    }

    private Path warmUp(String name, int readings, double spacingSeconds) throws Exception {
        Random random = new Random(20_261_126);
        StringBuilder text = new StringBuilder("seconds,celsius\n");
        for (int i = 0; i < readings; i++) {
            double seconds = i * spacingSeconds;
            double celsius = 24 + 60 * 0.5 * -Math.expm1(-seconds / 1000) + 0.1 * random.nextGaussian();
            text.append(String.format(Locale.ROOT, "%.1f,%.3f%n", seconds, celsius));
        }
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void aWarmUpTellsResistanceAndCapacity() throws Exception {
        Path file = warmUp("warm.csv", 200, 20);
        JsonNode fit = json(0, "thermal identify " + file + " --power-watts 60");
        assertEquals(1, fit.path("stages").size());
        holds(fit.path("kelvinPerWatt"), 0.5);
        holds(fit.path("airCelsius"), 24);
        holds(fit.path("stages").get(0).path("tauSeconds"), 1000);
        holds(fit.path("stages").get(0).path("joulesPerKelvin"), 2000);
        assertEquals(0.1, fit.path("noiseKelvin").doubleValue(), 0.02);
        assertEquals(0, run("thermal identify " + file + " --power-watts 60"));
        assertTrue(output().contains("One time constant"), output());
        assertTrue(output().contains("Caution: "), output());
    }

    /** The intervals are narrow, and what the readings were made from lies within half as much again. */
    private static void holds(JsonNode figure, double truth) {
        double half = (figure.path("upper").doubleValue() - figure.path("lower").doubleValue()) / 2;
        assertEquals(truth, figure.path("value").doubleValue(), 1.5 * half, figure.toString());
        assertTrue(half < 0.02 * truth, figure.toString());
    }

    @Test
    void aShortRecordIsRefusedWithWhatWouldDo() throws Exception {
        Path file = warmUp("short.csv", 30, 10);
        JsonNode fit = json(1, "thermal identify " + file + " --power-watts 60");
        assertFalse(fit.path("refused").textValue().isBlank());
        assertTrue(errors().contains("Log for at least"), errors());
        assertTrue(fit.path("stages").isMissingNode());
    }

    @Test
    void aCoolDownTellsTheTimeConstantOnly() throws Exception {
        StringBuilder text = new StringBuilder();
        Random random = new Random(7);
        for (int i = 0; i < 150; i++) {
            double celsius = 22 + 30 * Math.exp(-i * 20 / 800.0) + 0.1 * random.nextGaussian();
            text.append(String.format(Locale.ROOT, "%d;%.3f%n", i * 20, celsius));
        }
        Path file = Files.writeString(folder.resolve("cool.csv"), text);
        JsonNode fit = json(0, "thermal identify " + file + " --cool-down");
        holds(fit.path("stages").get(0).path("tauSeconds"), 800);
        assertTrue(fit.path("kelvinPerWatt").isMissingNode(), fit.toString());
        assertEquals(3, run("thermal identify " + file + " --cool-down --power-watts 5"));
        assertEquals(3, run("thermal identify " + file));
        assertTrue(errors().contains("--cool-down"), errors());
    }

    private static final String STAGE = "thermal step --supply-volts 14.4 --load-ohms 4 --class ab --rail-volts 28"
            + " --converter-percent 100 --idle-watts 0";

    @Test
    void aClassAbStageIsHottestAtTwoOverPi() throws Exception {
        // Closed form: at m = 2/pi half of the input power is heat; P = (m V)^2 / (2 R).
        double watts = Math.pow(2 / Math.PI * 28, 2) / 8;
        JsonNode step = json(0, STAGE + " --watts " + watts);
        assertEquals(2 * watts, step.path("outputWatts").doubleValue(), 1e-6);
        assertEquals(2 * watts, step.path("heatWatts").get(0).doubleValue(), 1e-6);
        assertEquals(2 * watts, step.path("heatWatts").get(1).doubleValue(), 1e-6);
        assertEquals(4 * watts / 14.4, step.path("supplyAverageAmps").doubleValue(), 1e-6);
        assertEquals(14.4, step.path("terminalVolts").doubleValue(), ROUNDING);
        JsonNode single = json(0, STAGE + " --watts " + watts + " --mode single");
        assertEquals(watts, single.path("heatWatts").get(1).doubleValue(), 1e-6);
        // Without a converter the current is a rectified sine: RMS over average is pi / (2 sqrt 2).
        JsonNode direct = json(0, STAGE.replace("--converter-percent 100", "--direct") + " --watts " + watts);
        assertEquals(
                Math.PI / (2 * Math.sqrt(2)),
                direct.path("supplyRmsAmps").doubleValue()
                        / direct.path("supplyAverageAmps").doubleValue(),
                ROUNDING);
    }

    @Test
    void theLimitsFollowOneTimeConstant() throws Exception {
        JsonNode step = json(
                1,
                "thermal step --supply-volts 14.4 --load-ohms 4 --watts 100 --efficiency-percent 50"
                        + " --case-kelvin-per-watt 0.45 --case-joules-per-kelvin 2500 --case-limit-celsius 80");
        // Closed forms of one R and C with 200 W of heat: 25 + P R; t = -R C ln(1 - dT/(P R)); P = dT/R.
        assertEquals(25 + 200 * 0.45, step.path("caseCelsius").get(1).doubleValue(), 1e-6);
        assertEquals(
                -0.45 * 2500 * Math.log1p(-55 / (200 * 0.45)),
                step.path("onTime").path("value").doubleValue(),
                1e-3);
        assertEquals(55 / 0.45, step.path("continuousHeatWatts").path("value").doubleValue(), 1e-6);
        // Closed form of pulses for ever: (1 - e^(-D T/tau)) / (1 - e^(-T/tau)) = 55/90.
        double tau = 0.45 * 2500;
        double duty = -tau / 600 * Math.log1p(55.0 / 90 * Math.expm1(-600 / tau));
        assertEquals(duty, step.path("duty").path("value").doubleValue(), 1e-6);
        assertTrue(errors().contains("above its 80"), errors());
    }

    @Test
    void aCoolStepIsUnlimitedAndSaysSo() throws Exception {
        assertEquals(
                0,
                run("thermal step --supply-volts 14.4 --load-ohms 4 --watts 10 --efficiency-percent 50"
                        + " --case-kelvin-per-watt 0.45 --case-joules-per-kelvin 2500 --case-limit-celsius 80"));
        assertTrue(output().contains("From cold: Unlimited"), output());
        assertTrue(output().contains("Caution: "), output());
    }

    @Test
    void burstsHeatByTheirMeanAndLoadTheSupplyByTheirPeak() throws Exception {
        JsonNode step = json(
                0,
                "thermal step --supply-volts 12.6 --source-milliohms 10 --battery --load-ohms 4 --watts 100 --mode bridged"
                        + " --class d --on-seconds 0.1 --period-seconds 0.5 --low-db -200 --rated-amps 30");
        assertEquals(20, step.path("outputWatts").doubleValue(), 1e-6);
        double loud = 100 + step.path("loudHeatWatts").get(1).doubleValue();
        double amps = (12.6 - Math.sqrt(12.6 * 12.6 - 4 * 0.01 * loud)) / 0.02;
        assertEquals(loud / amps, step.path("terminalVolts").doubleValue(), 1e-6);
        assertEquals(amps, step.path("supplyPeakAmps").doubleValue(), 1e-6);
        assertEquals(Math.sqrt(0.2) * amps, step.path("supplyRmsAmps").doubleValue(), 1e-6);
        assertTrue(step.path("cautions").toString().contains("battery"), step.toString());
        assertEquals("carries", step.path("fuse").path("result").textValue());
    }

    @Test
    void aSupplyThatLimitsFallsShort() {
        assertEquals(1, run("thermal step --supply-volts 14.4 --limit-amps 10 --load-ohms 4 --watts 100"));
        assertTrue(errors().contains("the supply limits at 10.0 A"), errors());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "cable --metres 5 --amps 10 | size of the cable is missing",
                "cable --square-millimetres 25 --amps 10 | length of the cable is missing",
                "cable --square-millimetres 25 --gauge 4 --metres 5 --amps 10 | leave one of them out",
                "cable --gauge 41 --metres 5 --amps 10 | --gauge is 41",
                "cable --gauge 4 --metres 5 | current is missing",
                "cable --gauge 4 --metres 5 --amps 1 --watts 1 | leave one of them out",
                "cable --gauge 4 --metres 5 --watts 100 | --supply-volts",
                "cable --gauge 4 --metres -5 --amps 10 | --metres is -5; it must be between",
                "cable --gauge 4 --metres 5 --amps -1 | --amps is -1",
                "cable --gauge 4 --metres 5 --amps 1 --ambient-celsius 200 | --ambient-celsius is 200",
                "cable --gauge 4 --metres 5 --amps 1 --outer-millimetres 3 | the wire alone is 5.19 mm",
                "fuse --amps 10 | rating is missing",
                "fuse --amps 10 --rated-amps 30 --count 0 | --count is 0",
                "fuse --amps 10 --rated-amps 80 | no table for a blade fuse of 80",
                "fuse --amps 10 --rated-amps 30 --on-seconds 1 | --period-seconds",
                "fuse --amps 10 --rated-amps 30 --on-seconds 2 --period-seconds 1 | must be longer",
                "fuse --amps 10 --rated-amps 30 --low-amps 1 | current between bursts",
                "sink --length-millimetres 20 --height-millimetres 20 --fins 10 --power-watts 1 | leave no gap",
                "sink --length-millimetres 20 --height-millimetres 20 --power-watts 0 | must be above 0",
                "sink --length-millimetres 20 --height-millimetres 20 --power-watts 1 --emissivity 2 | between 0 and 1",
                "step --supply-volts 14 --load-ohms 4 | --watts is missing",
                "step --supply-volts 14 --load-ohms 4 --watts 10 --channels 0 | --channels is 0",
                "step --supply-volts 14 --load-ohms 4 --watts 10 --idle-watts 9..5 | lower end first",
                "step --supply-volts 14 --load-ohms 4 --watts 10 --input-watts 5 | --input-watts is 5",
                "step --supply-volts 14 --load-ohms 4 --watts 10 --direct --converter-percent 90 | no converter",
                "step --supply-volts 14 --load-ohms 4 --watts 10 --battery --limit-amps 9 | no current limit",
                "step --supply-volts 14 --load-ohms 4 --watts 10 --case-kelvin-per-watt -1 | --case-kelvin-per-watt is -1",
            })
    void badInputIsRefusedWithASentence(String words, String expected) {
        assertEquals(3, run("thermal " + words.strip()), errors());
        assertTrue(errors().contains(expected.strip()), errors());
        assertTrue(errors().startsWith("ohmstead: ") && errors().strip().endsWith("."), errors());
    }

    @Test
    void everyWordExplainsItselfWithAnExampleThatRuns() {
        for (String word : List.of("cable", "fuse", "sink", "step")) {
            assertEquals(0, run("thermal " + word + " --help"));
            String help = output().replaceAll("\\s+", " ");
            int at = help.lastIndexOf("Example: ohmstead ");
            assertTrue(at > 0, help);
            String example = help.substring(at + "Example: ohmstead ".length());
            int exitCode = run(example.strip());
            assertTrue(exitCode == 0 || exitCode == 1, example + errors());
        }
        assertEquals(2, run("thermal fuse --amps 1 --rated-amps 30 --kind glass"));
        assertTrue(errors().contains("blade, large-blade, cartridge"), errors());
        assertEquals(2, run("thermal step --supply-volts 14 --load-ohms 4 --watts 10 --class x"));
    }
}
