// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.hipparchus.complex.Complex;
import org.hipparchus.complex.ComplexField;
import org.hipparchus.linear.ArrayFieldVector;
import org.hipparchus.linear.FieldLUDecomposition;
import org.hipparchus.linear.FieldMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.PartTraits;

class NetworkImpedanceTest {
    private static final double NODAL = 1e-9;

    private static Network coil(double ohms, double microhenries) {
        return Network.of(new Resistor(
                "A",
                ohms,
                0.05,
                Optional.empty(),
                PartTraits.NONE.withInductanceHenries(OptionalDouble.of(microhenries * 1e-6))));
    }

    /** |Z| = sqrt(R^2 + (omega L)^2) and what follows from it, worked out by hand for 20 kHz. */
    @ParameterizedTest
    @CsvSource({
        "4, 10, 4.192748, 17.440594, .09869604, 9025.643, 6398.269",
        "2, 10, 2.362020, 32.141908, .39478418, 4512.822, 3199.135",
        "8, 20, 8.385496, 17.440594, .09869604, 9025.643, 6398.269",
        "1, 5, 1.181010, 32.141908, .39478418, 4512.822, 3199.135",
        "4, 1, 4.001973, 1.799408, .00098696, 90256.43, 63982.69"
    })
    void workedOutByHand(
            double ohms,
            double microhenries,
            double magnitude,
            double degrees,
            double overstatement,
            double impedanceLimitHz,
            double powerLimitHz) {
        NetworkImpedance impedance = NetworkImpedance.of(coil(ohms, microhenries));
        assertEquals(magnitude, impedance.at(20_000).magnitudeOhms(), 1e-6);
        assertEquals(degrees, impedance.at(20_000).phaseDegrees(), 1e-6);
        assertEquals(overstatement, impedance.overstatementRatio(20_000), 1e-8);
        assertEquals(impedanceLimitHz, impedance.impedanceLimitHz(0.01).orElseThrow(), 1e-6 * impedanceLimitHz);
        assertEquals(powerLimitHz, impedance.powerLimitHz(0.01).orElseThrow(), 1e-6 * powerLimitHz);
        assertEquals(
                NetworkImpedance.powerLimitHz(ohms, microhenries * 1e-6, 0.01),
                impedance.powerLimitHz(0.01).orElseThrow(),
                1e-9 * powerLimitHz);
        // True power is V^2 R / |Z|^2.
        assertEquals(100 * ohms / (magnitude * magnitude), impedance.at(20_000).realPowerWatts(10), 1e-5 * 100 / ohms);
    }

    @Test
    void agreesWithTheNodeEquationsOfRandomNetworks() {
        Random random = new Random(20261126);
        for (int trial = 0; trial < 60; trial++) {
            Network network = RandomNetworks.next(random, 1 + random.nextInt(12));
            double leadOhms = random.nextDouble() * 0.1;
            double leadHenries = random.nextDouble() * 2e-6;
            NetworkImpedance impedance = NetworkImpedance.of(network, leadOhms, leadHenries);
            for (double frequencyHz : new double[] {20, 1000, 20_000, 250_000}) {
                Complex lead = new Complex(leadOhms, 2 * Math.PI * frequencyHz * leadHenries);
                Complex expected = new Nodes(network, 2 * Math.PI * frequencyHz)
                        .impedance()
                        .add(lead);
                Impedance actual = impedance.at(frequencyHz);
                assertEquals(expected.getReal(), actual.resistanceOhms(), NODAL * expected.norm());
                assertEquals(expected.getImaginary(), actual.reactanceOhms(), NODAL * expected.norm());
            }
        }
    }

    /** The network as a graph: its node equations, solved by Hipparchus. */
    private static final class Nodes {
        private final double omega;
        private final List<int[]> ends = new ArrayList<>();
        private final List<Complex> admittances = new ArrayList<>();
        private int nodes = 2;

        Nodes(Network network, double omega) {
            this.omega = omega;
            add(network, 0, 1);
        }

        private void add(Network network, int from, int to) {
            if (network instanceof Network.Single single) {
                Resistor resistor = single.resistor();
                ends.add(new int[] {from, to});
                admittances.add(new Complex(
                                resistor.ohms(),
                                omega * resistor.traits().inductanceHenries().orElse(0))
                        .reciprocal());
                return;
            }
            List<Network> members = NetworkAnalysis.members(network);
            int start = from;
            for (int i = 0; i < members.size(); i++) {
                if (network instanceof Network.Parallel) {
                    add(members.get(i), from, to);
                } else {
                    int end = i == members.size() - 1 ? to : nodes++;
                    add(members.get(i), start, end);
                    start = end;
                }
            }
        }

        Complex impedance() {
            // Node 1 is ground; one ampere flows into node 0, whose voltage is then the impedance.
            FieldMatrix<Complex> matrix =
                    MatrixUtils.createFieldMatrix(ComplexField.getInstance(), nodes - 1, nodes - 1);
            for (int i = 0; i < ends.size(); i++) {
                stamp(matrix, ends.get(i)[0], ends.get(i)[1], admittances.get(i));
            }
            ArrayFieldVector<Complex> current = new ArrayFieldVector<>(ComplexField.getInstance(), nodes - 1);
            current.setEntry(0, Complex.ONE);
            return new FieldLUDecomposition<>(matrix).getSolver().solve(current).getEntry(0);
        }

        private static void stamp(FieldMatrix<Complex> matrix, int from, int to, Complex admittance) {
            int row = from == 0 ? 0 : from - 1;
            int column = to == 0 ? 0 : to - 1;
            boolean fromGround = from == 1;
            boolean toGround = to == 1;
            if (!fromGround) {
                matrix.addToEntry(row, row, admittance);
            }
            if (!toGround) {
                matrix.addToEntry(column, column, admittance);
            }
            if (!fromGround && !toGround) {
                matrix.addToEntry(row, column, admittance.negate());
                matrix.addToEntry(column, row, admittance.negate());
            }
        }
    }

    @Test
    void riseSteadilySoThatTheLimitsAreWhereTheyAreReachedFirst() {
        Random random = new Random(17);
        for (int trial = 0; trial < 40; trial++) {
            NetworkImpedance impedance = NetworkImpedance.of(RandomNetworks.next(random, 1 + random.nextInt(8)));
            double fall = -1;
            double magnitude = 0;
            for (double frequencyHz = 1; frequencyHz < 1e8; frequencyHz *= 1.3) {
                assertTrue(impedance.powerFallRatio(frequencyHz) >= fall - 1e-12);
                assertTrue(impedance.at(frequencyHz).magnitudeOhms() >= magnitude * (1 - 1e-12));
                fall = impedance.powerFallRatio(frequencyHz);
                magnitude = impedance.at(frequencyHz).magnitudeOhms();
            }
            double limitHz = impedance.powerLimitHz(0.01).orElseThrow();
            assertEquals(0.01, impedance.powerFallRatio(limitHz), 1e-9);
            assertEquals(
                    0.01,
                    impedance.at(impedance.impedanceLimitHz(0.01).orElseThrow()).magnitudeOhms() / impedance.ohms() - 1,
                    1e-9);
        }
    }

    @Test
    void hasNoLimitWithoutInductance() throws NotationException {
        NetworkImpedance impedance = NetworkImpedance.of(NetworkNotation.parse("8R||8R", Stock.EMPTY));
        assertTrue(impedance.powerLimitHz(0.01).isEmpty());
        assertTrue(impedance.impedanceLimitHz(0.01).isEmpty());
        assertFalse(impedance.isComplete());
        assertEquals(4, impedance.at(1e6).magnitudeOhms(), 1e-12);
        assertEquals(4.1, NetworkImpedance.of(impedanceNetwork(), 0.1, 0).ohms(), 1e-12);
    }

    private static Network impedanceNetwork() {
        return coil(4, 1);
    }
}
