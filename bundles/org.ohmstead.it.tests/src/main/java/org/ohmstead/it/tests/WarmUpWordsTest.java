// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What logged warm-ups tell, inside the framework. */
class WarmUpWordsTest {
    @TempDir
    private Path folder;

    // The demo's warm-up was made with 0.45 K/W and 2900 J/K (demo-data/simulation/make_warm_up.py).
    @Test
    void theDemosWarmUpTellsWhatItWasMadeWith() throws IOException {
        String file = Path.of(System.getProperty("ohmstead.root"), "demo-data/warm-up.csv")
                .toString();
        JsonNode found = Words.run("thermal", "identify", file, "--power-watts", "52", "--json")
                .json();
        assertHolds(found.get("kelvinPerWatt"), 0.45);
        assertEquals(1, found.get("stages").size());
        assertHolds(found.get("stages").get(0).get("joulesPerKelvin"), 2900);
        assertHolds(found.get("airCelsius"), 22.5);
    }

    private static void assertHolds(JsonNode figure, double truth) {
        assertTrue(
                figure.get("lower").asDouble() <= truth
                        && truth <= figure.get("upper").asDouble(),
                figure + " does not hold " + truth);
    }

    @Test
    void aWarmUpIsIdentified() throws IOException {
        Random random = new Random(5);
        StringBuilder text = new StringBuilder("seconds;celsius\n");
        for (int i = 0; i < 120; i++) {
            double celsius = 25 + 80 * 0.45 * -Math.expm1(-30.0 * i / 900) + 0.1 * random.nextGaussian();
            text.append(String.format(Locale.ROOT, "%d;%.2f%n", 30 * i, celsius));
        }
        Path file = Files.writeString(folder.resolve("warm-up.csv"), text);
        JsonNode fit = Words.run("thermal", "identify", file.toString(), "--power-watts", "80", "--json")
                .json();
        assertEquals(0.45, fit.at("/kelvinPerWatt/value").asDouble(), 0.01);
        assertEquals(900, fit.at("/stages/0/tauSeconds/value").asDouble(), 30);
        assertEquals(25, fit.at("/airCelsius/value").asDouble(), 0.3);
    }
}
