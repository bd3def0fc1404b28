// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A thousand steps of power against a circuit simulator (ngspice), which knows nothing of this software: heat is current, temperature is
 * voltage, and the same ladder of resistances and capacities is solved by time steps.
 */
class HeatSimulatorTest {
    private static final double WITHIN_KELVIN = 0.1;
    private static final double RISE_SECONDS = 1e-4;
    private static final double[] KELVIN_PER_WATT = {0.3, 0.4, 0.2, 1.1};
    private static final double[] JOULES_PER_KELVIN = {0.8, 12, 60, 500};

    @TempDir
    private Path folder;

    @Test
    void agreesWithTheSimulatorOverAThousandSteps() throws Exception {
        assumeTrue(installed(), "ngspice is not installed");
        List<PowerStep> steps = new ArrayList<>();
        Random random = new Random(42);
        for (int i = 0; i < 1000; i++) {
            double seconds = Math.round(100 * Math.pow(10, -0.5 + 1.7 * random.nextDouble())) / 100.0;
            steps.add(new PowerStep(seconds, random.nextInt(3) == 0 ? 0 : Math.round(60 * random.nextDouble())));
        }
        PowerProfile profile = new PowerProfile(steps);
        List<double[]> rows = simulate(profile);
        HeatModel model = ladder();
        assertTrue(rows.size() > 2000, "only " + rows.size() + " rows");
        double[] times = rows.stream().mapToDouble(row -> row[0]).toArray();
        double hottest = 0;
        double greatest = 0;
        for (int point = 0; point < KELVIN_PER_WATT.length; point++) {
            double[] rises = profile.risesKelvin(model, point, model.cold(), times);
            for (int i = 0; i < times.length; i++) {
                greatest = Math.max(greatest, Math.abs(rises[i] - rows.get(i)[1 + point]));
                hottest = Math.max(hottest, rises[i]);
            }
        }
        assertTrue(hottest > 50, "the profile should heat: " + hottest);
        assertEquals(0, greatest, WITHIN_KELVIN);
    }

    private static HeatModel ladder() {
        HeatNetwork.Builder builder = new HeatNetwork.Builder();
        for (int i = 0; i < KELVIN_PER_WATT.length; i++) {
            builder.body("n" + i, JOULES_PER_KELVIN[i]);
        }
        for (int i = 0; i < KELVIN_PER_WATT.length - 1; i++) {
            builder.link("n" + i, "n" + (i + 1), KELVIN_PER_WATT[i]);
        }
        builder.toAir("n3", KELVIN_PER_WATT[3]).source("s", "n0");
        for (int i = 0; i < KELVIN_PER_WATT.length; i++) {
            builder.point(new HeatPoint("n" + i, "body " + i, OptionalDouble.empty()), "n" + i);
        }
        return builder.build().model();
    }

    private List<double[]> simulate(PowerProfile profile) throws IOException, InterruptedException {
        Path result = folder.resolve("rises.txt");
        StringBuilder circuit = new StringBuilder("thermal ladder\n");
        circuit.append("I1 0 n0 PWL(0 ")
                .append(profile.steps().get(0).watts()[0])
                .append('\n');
        double now = 0;
        for (int i = 1; i < profile.steps().size(); i++) {
            now += profile.steps().get(i - 1).seconds();
            circuit.append(String.format(
                    Locale.ROOT,
                    "+ %.9g %.9g %.9g %.9g%n",
                    now,
                    profile.steps().get(i - 1).watts()[0],
                    now + RISE_SECONDS,
                    profile.steps().get(i).watts()[0]));
        }
        circuit.append("+ )\n");
        for (int i = 0; i < KELVIN_PER_WATT.length; i++) {
            String next = i + 1 < KELVIN_PER_WATT.length ? "n" + (i + 1) : "0";
            circuit.append(String.format(Locale.ROOT, "R%d n%d %s %.9g%n", i, i, next, KELVIN_PER_WATT[i]));
            circuit.append(String.format(Locale.ROOT, "C%d n%d 0 %.9g IC=0%n", i, i, JOULES_PER_KELVIN[i]));
        }
        circuit.append(String.format(
                Locale.ROOT,
                ".options reltol=1e-5%n.tran 0.1 %.9g 0 0.1 UIC%n.control%nset wr_singlescale%nrun%n"
                        + "wrdata %s v(n0) v(n1) v(n2) v(n3)%nquit%n.endc%n.end%n",
                profile.seconds(),
                result));
        Path netlist = folder.resolve("ladder.cir");
        Files.writeString(netlist, circuit, StandardCharsets.US_ASCII);
        Process process = new ProcessBuilder("ngspice", "-b", netlist.toString())
                .redirectErrorStream(true)
                .start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(5, TimeUnit.MINUTES), "still running");
        assertTrue(Files.exists(result), output);
        List<double[]> rows = new ArrayList<>();
        for (String line : Files.readAllLines(result, StandardCharsets.US_ASCII)) {
            String[] words = line.strip().split("\\s+");
            double[] row = new double[words.length];
            for (int i = 0; i < row.length; i++) {
                row[i] = Double.parseDouble(words[i]);
            }
            if (rows.isEmpty() || row[0] > rows.get(rows.size() - 1)[0]) {
                rows.add(row);
            }
        }
        return rows;
    }

    private static boolean installed() throws InterruptedException {
        try {
            Process process = new ProcessBuilder("ngspice", "--version")
                    .redirectErrorStream(true)
                    .start();
            process.getInputStream().readAllBytes();
            return process.waitFor() == 0;
        } catch (IOException absent) {
            System.getLogger("test").log(System.Logger.Level.INFO, "ngspice is not there", absent);
            return false;
        }
    }
}
