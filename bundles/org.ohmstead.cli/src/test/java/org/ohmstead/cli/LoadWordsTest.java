// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LoadWordsTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... words) {
        out.reset();
        err.reset();
        return Ohmstead.run(words, new PrintStream(out), new PrintStream(err));
    }

    private JsonNode json() throws Exception {
        return new ObjectMapper().readTree(out.toString(StandardCharsets.UTF_8));
    }

    private String errors() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void findsTheNearestNetworkOfFiveValues() throws Exception {
        assertEquals(0, run("load", "find", "--target-ohms", "4", "--stock", "1,2.2,4.7,8.2,10", "--json"));
        JsonNode best = json().path("candidates").get(0);
        // All series-parallel networks of the five values by exact fractions: 35219/8805.
        assertEquals(35219.0 / 8805, best.path("ohms").doubleValue(), 1e-12);
        assertEquals(35219.0 / 8805 / 4 - 1, best.path("errorRatio").doubleValue(), 1e-12);
        assertEquals(5, best.path("parts").intValue());
        assertEquals(5, json().path("exactUpToParts").intValue());
        double ohms = best.path("ohms").doubleValue();
        // Resistance is a homogeneous function: with 5 % on every value the worst case is 5 % either way.
        assertEquals(0.95 * ohms, best.path("worstCaseOhms").get(0).doubleValue(), 1e-12);
        assertEquals(1.05 * ohms, best.path("worstCaseOhms").get(1).doubleValue(), 1e-12);
        assertTrue(best.path("powerLimitWatts").isNull());
    }

    @Test
    void anImpossibleLimitFallsShortAndSaysTheNearest() throws Exception {
        assertEquals(
                1, run("load", "find", "--target-ohms", "100", "--stock", "1,2", "--within-percent", "1", "--json"));
        assertEquals(0, json().path("candidates").size());
        assertTrue(errors().contains("3"), errors());
    }

    @Test
    void showsHowANetworkSharesThePower() throws Exception {
        assertEquals(
                0,
                run(
                        "load",
                        "show",
                        "3R9@100W||(6R8@25W+10@50W)",
                        "--power-watts",
                        "100",
                        "--tolerance-percent",
                        "1",
                        "--json"));
        JsonNode shown = json();
        // Closed form: 3.9 || 16.8 = 3.165217..., currents divide inversely to the resistances.
        assertEquals(3.9 * 16.8 / 20.7, shown.path("ohms").doubleValue(), 1e-12);
        assertEquals(
                100 * 16.8 / 20.7, shown.path("parts").get(0).path("powerWatts").doubleValue(), 1e-9);
        assertEquals(
                100 * 3.9 / 20.7 * 6.8 / 16.8,
                shown.path("parts").get(1).path("powerWatts").doubleValue(),
                1e-9);
        assertEquals(Math.sqrt(100 * 3.9 * 16.8 / 20.7), shown.path("voltsRms").doubleValue(), 1e-9);
        assertEquals("3R9@100W", shown.path("limitingPart").textValue());
        assertEquals(100 / (16.8 / 20.7), shown.path("powerLimitWatts").doubleValue(), 1e-9);
    }

    @Test
    void saysWhichPartIsOverloaded() {
        assertEquals(1, run("load", "show", "8R2@50W||8R2@100W", "--power-watts", "150"));
        assertTrue(errors().contains("8R2@50W reaches its limit first"), errors());
        assertTrue(out.toString(StandardCharsets.UTF_8).contains("Caution"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "(8R2||8R2; bracket",
                "8R2||-4; cannot be negative",
                "8R2||0; above 0",
                "8R2+; missing",
                "8R2||PX; PX",
            })
    void pointsAtTheCharacterThatIsWrong(String network, String part) {
        assertEquals(3, run("load", "show", network, "--power-watts", "1"));
        assertTrue(errors().contains("Character "), errors());
        assertTrue(errors().contains("^"), errors());
        assertTrue(errors().contains(part), errors());
    }

    @ParameterizedTest
    @CsvSource({
        "--target-ohms,-4,must be above 0",
        "--target-ohms,0,must be above 0",
        "--max-parts,0,between 1 and 30",
        "--power-watts,nothing,does not begin with a number",
        "--tolerance-percent,120,between 0 and 100",
    })
    void refusesOptionsOutOfRange(String option, String value, String expected) {
        String[] words = option.equals("--target-ohms")
                ? new String[] {"load", "find", option, value, "--stock", "4,8"}
                : new String[] {"load", "find", "--target-ohms", "4", "--stock", "4,8", option, value};
        assertEquals(3, run(words));
        assertTrue(errors().contains(expected), errors());
    }

    @Test
    void takesFullPartsFromAFile(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(
                folder.resolve("stock.json"),
                """
                [{"id": "A", "ohms": 8, "toleranceRatio": 0.01, "ratedWatts": 100, "ratedToCelsius": 25,
                  "zeroPowerCelsius": 250, "mounting": "heatSink", "count": 2}]""");
        assertEquals(0, run("load", "find", "--target-ohms", "4", "--stock", file.toString(), "--json"));
        JsonNode best = json().path("candidates").get(0);
        assertEquals("A||A", best.path("network").textValue());
        assertEquals(200, best.path("powerLimitWatts").doubleValue(), 1e-9);
        assertEquals(
                0,
                run(
                        "load",
                        "show",
                        "A+A",
                        "--stock",
                        file.toString(),
                        "--power-watts",
                        "50",
                        "--ambient-celsius",
                        "85",
                        "--json"));
        // Derating line of MIL-PRF-39009: 100 W at 25 degrees, none at 250: 0.733333 at 85.
        assertEquals(2 * 100 * 165.0 / 225, json().path("powerLimitWatts").doubleValue(), 1e-9);
    }

    @Test
    void aStockMustBeNamed() {
        assertEquals(3, run("load", "find", "--target-ohms", "4"));
        assertTrue(errors().contains("No stock is named"), errors());
    }

    @Test
    void plansABankOfFourEqualResistors() throws Exception {
        // Closed form: of two 8 ohm resistors 16, 8 and 4 ohms can be made, so two pieces do for all three.
        assertEquals(0, run("load", "bank", "--loads", "16,8,4@150W", "--stock", "8@100Wx4", "--json"));
        JsonNode plan = json();
        assertEquals(2, plan.path("pieces").size());
        assertTrue(plan.path("fewestPiecesProven").booleanValue());
        assertEquals(3, plan.path("straps").size());
        for (JsonNode strap : plan.path("straps")) {
            JsonNode branch = strap.path("branches").get(0);
            assertEquals(
                    strap.path("loadOhms").doubleValue(), branch.path("ohms").doubleValue(), 1e-12);
        }
        assertEquals(0, run("load", "bank", "--loads", "8x2,4", "--stock", "8@100Wx4"));
        assertTrue(out.toString(StandardCharsets.UTF_8).contains("neither terminal is ground"));
    }

    @Test
    void aLoadThatCannotBeMadeFallsShort() {
        assertEquals(1, run("load", "bank", "--loads", "8,1", "--stock", "8x2"));
        assertTrue(errors().contains("1 "), errors());
        assertEquals(3, run("load", "bank", "--loads", "8y2", "--stock", "8x2"));
        assertEquals(3, run("load", "bank", "--stock", "8x2"));
    }
}
