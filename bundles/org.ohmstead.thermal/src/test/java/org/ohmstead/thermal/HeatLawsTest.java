// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.ohmstead.thermal.AnyHeatNetwork.Stretch;

/** Conservation, linearity and order: what holds for everything that gets warm and cools again. */
class HeatLawsTest {
    private static final double RATIO = 1e-8;

    /** First law: what goes in is stored or leaves. The mean of a mode over a stretch is exact: B P + tau (x0 - x1) / T. */
    @Property(seed = "20261131", tries = 150)
    void heatInIsHeatStoredAndHeatOut(
            @ForAll("networks") AnyHeatNetwork drawn, @ForAll("stretches") List<Stretch> stretches) {
        HeatNetwork network = drawn.network();
        HeatModel model = network.model();
        double[] state = model.cold();
        double throughput = 0;
        for (Stretch stretch : stretches) {
            double[] watts = stretch.watts(drawn.bodies().size());
            double[] before = state.clone();
            double storedBefore = network.storedJoules(state);
            model.advance(state, watts, stretch.seconds());
            double[] mean = model.settled(watts);
            for (int mode = 0; mode < mean.length && stretch.seconds() > 0; mode++) {
                mean[mode] += model.tauSeconds(mode) * (before[mode] - state[mode]) / stretch.seconds();
            }
            double in = stretch.seconds() * Arrays.stream(watts).sum();
            double out = stretch.seconds() * network.wattsToAir(mean, watts);
            throughput += in + Math.abs(out);
            assertEquals(in, network.storedJoules(state) - storedBefore + out, RATIO * (1 + throughput));
        }
    }

    @Property(seed = "20261132", tries = 150)
    void withoutPowerNothingLeavesTheRangeOfWhatThereWas(
            @ForAll("networks") AnyHeatNetwork drawn,
            @ForAll("rises") List<Integer> rises,
            @ForAll @DoubleRange(max = 500) double seconds) {
        HeatNetwork network = drawn.network();
        int count = drawn.bodies().size();
        double[] start = repeated(rises, count);
        double[] state = network.state(start);
        double high = Math.max(0, Arrays.stream(start).max().orElseThrow()) + 1e-7;
        double low = Math.min(0, Arrays.stream(start).min().orElseThrow()) - 1e-7;
        for (int i = 0; i < 5; i++) {
            network.model().advance(state, new double[count], seconds / 5);
            double[] now = network.risesKelvin(state);
            assertTrue(Arrays.stream(now).allMatch(rise -> rise <= high && rise >= low), () -> Arrays.toString(now));
        }
        network.model().advance(state, new double[count], 1e9);
        assertArrayEquals(new double[count], network.risesKelvin(state), 1e-7);
    }

    @Property(seed = "20261133", tries = 150)
    void answersAddUp(
            @ForAll("networks") AnyHeatNetwork drawn,
            @ForAll("stretches") List<Stretch> stretches,
            @ForAll("rises") List<Integer> rises,
            @ForAll @IntRange(max = 50) int factor) {
        HeatNetwork network = drawn.network();
        HeatModel model = network.model();
        int count = drawn.bodies().size();
        double[] heated = model.cold();
        double[] left = network.state(repeated(rises, count));
        double[] both = network.state(repeated(rises, count));
        double[] times = model.cold();
        for (Stretch stretch : stretches) {
            double[] watts = stretch.watts(count);
            double[] more = Arrays.stream(watts).map(each -> factor * each).toArray();
            model.advance(heated, watts, stretch.seconds());
            model.advance(left, new double[count], stretch.seconds());
            model.advance(both, watts, stretch.seconds());
            model.advance(times, more, stretch.seconds());
            for (int point = 0; point < count; point++) {
                double rise = model.riseKelvin(point, heated, watts);
                double sum = rise + model.riseKelvin(point, left, new double[count]);
                assertEquals(sum, model.riseKelvin(point, both, watts), RATIO * (100 + Math.abs(sum)));
                assertEquals(
                        factor * rise, model.riseKelvin(point, times, more), RATIO * (1 + factor * Math.abs(rise)));
            }
        }
    }

    /** In a row each resistance carries the power of all bodies before it: the rise is the sum of R P on the way to the air. */
    @Property(seed = "20261134", tries = 150)
    void aRowSettlesAtTheSumOfResistanceTimesPower(
            @ForAll("rows") List<CauerStage> stages, @ForAll("rises") List<Integer> drawnWatts) {
        int count = stages.size();
        HeatNetwork.Builder builder = new HeatNetwork.Builder();
        for (int i = count - 1; i >= 0; i--) {
            CauerStage stage = stages.get(i);
            builder.body("b" + i, stage.joulesPerKelvin());
            if (i == count - 1) {
                builder.toAir("b" + i, stage.kelvinPerWatt());
            } else {
                builder.link("b" + i, "b" + (i + 1), stage.kelvinPerWatt());
            }
        }
        for (int i = 0; i < count; i++) {
            builder.source("s" + i, "b" + i).point(new HeatPoint("b" + i, "body", OptionalDouble.empty()), "b" + i);
        }
        HeatNetwork network = builder.build();
        double[] watts =
                Arrays.stream(repeated(drawnWatts, count)).map(Math::abs).toArray();
        double flowing = 0;
        double[] expected = new double[count + 1];
        for (int i = 0; i < count; i++) {
            flowing += watts[i];
            for (int warmed = 0; warmed <= i; warmed++) {
                expected[warmed] += flowing * stages.get(i).kelvinPerWatt();
            }
        }
        for (int i = 0; i < count; i++) {
            assertEquals(25 + expected[i], network.model().settledCelsius(i, watts, 25), RATIO * (1 + expected[i]));
        }
        double out = network.wattsToAir(network.model().settled(watts), watts);
        assertEquals(flowing, out, RATIO * (1 + flowing));
    }

    @Property(seed = "20261135", tries = 150)
    void oneLongStepIsManyShortOnes(
            @ForAll("networks") AnyHeatNetwork drawn,
            @ForAll("stretches") List<Stretch> stretches,
            @ForAll @IntRange(min = 2, max = 9) int parts) {
        HeatModel model = drawn.network().model();
        double[] one = model.cold();
        double[] many = model.cold();
        List<PowerStep> steps = stretches.stream()
                .filter(stretch -> stretch.seconds() > 0)
                .map(stretch -> new PowerStep(
                        stretch.seconds(), stretch.watts(drawn.bodies().size())))
                .toList();
        for (PowerStep step : steps) {
            model.advance(one, step.watts(), step.seconds());
            for (int i = 1; i <= parts; i++) {
                model.advance(many, step.watts(), step.seconds() * 2 * i / (parts * (parts + 1.0)));
            }
        }
        assertArrayEquals(one, many, RATIO * (1 + greatest(one)));
        if (!steps.isEmpty()) {
            assertArrayEquals(one, new PowerProfile(steps).after(model, model.cold()), RATIO * (1 + greatest(one)));
        }
    }

    @Property(seed = "20261136", tries = 150)
    void morePowerCoolsNothingAndHeatsSooner(
            @ForAll("networks") AnyHeatNetwork drawn,
            @ForAll("stretches") List<Stretch> stretches,
            @ForAll @IntRange(max = 4) int which,
            @ForAll @IntRange(min = 1, max = 100) int added) {
        HeatModel model = drawn.network().model();
        int count = drawn.bodies().size();
        double[] less = model.cold();
        double[] more = model.cold();
        double[] watts = new double[count];
        double[] raised = watts;
        for (Stretch stretch : stretches) {
            watts = stretch.watts(count);
            raised = watts.clone();
            raised[which % count] += added;
            model.advance(less, watts, stretch.seconds());
            model.advance(more, raised, stretch.seconds());
            for (int point = 0; point < count; point++) {
                double low = model.riseKelvin(point, less, watts);
                double high = model.riseKelvin(point, more, raised);
                assertTrue(low >= -1e-7 && high >= low - RATIO * (1 + low), low + " and " + high);
            }
        }
        for (int point = 0; point < count; point++) {
            double wanted = 0.9 * model.settledCelsius(point, watts, 0);
            if (wanted < 0.01) {
                continue;
            }
            double sooner = seconds(model.heatsTo(point, model.cold(), raised, wanted));
            double later = seconds(model.heatsTo(point, model.cold(), watts, wanted));
            assertTrue(sooner <= later * (1 + 1e-6) + 1e-5, sooner + " s and " + later + " s");
        }
    }

    @Property(seed = "20261137", tries = 150)
    void thePeakIsReachedAndNothingIsHotter(
            @ForAll("networks") AnyHeatNetwork drawn,
            @ForAll("rises") List<Integer> rises,
            @ForAll("stretches") List<Stretch> stretches) {
        HeatNetwork network = drawn.network();
        HeatModel model = network.model();
        int count = drawn.bodies().size();
        double[] start = network.state(repeated(rises, count));
        double[] watts = stretches.get(0).watts(count);
        double seconds = stretches.get(0).seconds();
        for (int point = 0; point < count; point++) {
            HeatPeak peak = model.peak(point, start, watts, seconds);
            assertTrue(peak.afterSeconds() <= seconds);
            assertEquals(peak.riseKelvin(), riseAfter(model, point, start, watts, peak.afterSeconds()), 1e-6);
            for (int i = 0; i <= 20; i++) {
                double rise = riseAfter(model, point, start, watts, seconds * i / 20);
                assertTrue(rise <= peak.riseKelvin() + 1e-6, rise + " above " + peak.riseKelvin());
            }
            double first = riseAfter(model, point, start, watts, 0);
            if (peak.riseKelvin() - first < 1e-3) {
                continue;
            }
            double middle = (first + peak.riseKelvin()) / 2;
            double when = seconds(model.heatsTo(point, start, watts, middle));
            assertTrue(when <= peak.afterSeconds() + 1e-6, "reached at " + when);
            assertTrue(riseAfter(model, point, start, watts, when) >= middle - 1e-5);
        }
    }

    @Property(seed = "20261138", tries = 150)
    void bodiesWarmOneAnotherAlike(
            @ForAll("networks") AnyHeatNetwork drawn, @ForAll @DoubleRange(max = 900) double seconds) {
        HeatModel model = drawn.network().model();
        int count = drawn.bodies().size();
        for (int one = 0; one < count; one++) {
            for (int other = 0; other < one; other++) {
                double there = riseAfter(model, other, model.cold(), watt(count, one), seconds);
                double back = riseAfter(model, one, model.cold(), watt(count, other), seconds);
                assertEquals(there, back, RATIO * (1 + there));
            }
        }
    }

    @Property(seed = "20261139", tries = 150)
    void aRowAndItsChainOfModesAnswerAlike(@ForAll("rows") List<CauerStage> stages) {
        CauerLadder ladder = new CauerLadder(stages);
        FosterChain chain = ladder.fosterChain();
        assertEquals(ladder.kelvinPerWatt(), chain.kelvinPerWatt(), RATIO * ladder.kelvinPerWatt());
        double before = 0;
        for (double seconds = 0.01; seconds < 1e6; seconds *= 3) {
            double now = chain.kelvinPerWattAfter(seconds);
            assertTrue(now >= before - 1e-12 && now <= chain.kelvinPerWatt() * (1 + 1e-12));
            before = now;
        }
        CauerLadder again = CauerLadder.of(chain);
        FosterChain back = again.fosterChain();
        for (double seconds = 0.01; seconds < 1e6; seconds *= 3) {
            assertEquals(
                    chain.kelvinPerWattAfter(seconds), back.kelvinPerWattAfter(seconds), 1e-6 * chain.kelvinPerWatt());
        }
    }

    @Property(seed = "20261140", tries = 100)
    void settledBurstsRepeatThemselvesAboutTheirMean(
            @ForAll("networks") AnyHeatNetwork drawn,
            @ForAll("rises") @Size(min = 2) List<Integer> watts,
            @ForAll @DoubleRange(min = 0.1, max = 100) double loudSeconds,
            @ForAll @DoubleRange(min = 0.1, max = 100) double quietSeconds) {
        HeatModel model = drawn.network().model();
        int count = drawn.bodies().size();
        double[] loud = Arrays.stream(repeated(watts, count)).map(Math::abs).toArray();
        double[] quiet = Arrays.stream(loud).map(each -> each / 3).toArray();
        BurstTrain train = new BurstTrain(loud, loudSeconds, quiet, quietSeconds);
        double[] state = train.settledBeforeLoud(model);
        double[] later = state.clone();
        model.advance(later, loud, loudSeconds);
        assertArrayEquals(train.settledAfterLoud(model), later, RATIO * (1 + greatest(later)));
        model.advance(later, quiet, quietSeconds);
        assertArrayEquals(state, later, RATIO * (1 + greatest(state)));
        for (int point = 0; point < count; point++) {
            double mean = model.settledCelsius(point, train.averageWatts(), 0);
            assertTrue(train.settledPeak(model, point).riseKelvin() >= mean - RATIO * (1 + mean));
            assertTrue(train.rippleKelvin(model, point) >= -1e-9);
        }
    }

    @Provide
    Arbitrary<AnyHeatNetwork> networks() {
        return AnyHeatNetwork.any();
    }

    @Provide
    Arbitrary<List<Stretch>> stretches() {
        return AnyHeatNetwork.stretches();
    }

    @Provide
    Arbitrary<List<Integer>> rises() {
        return Arbitraries.integers().between(-30, 90).list().ofMinSize(1).ofMaxSize(5);
    }

    @Provide
    Arbitrary<List<CauerStage>> rows() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 80).map(digits -> digits / 20.0),
                        Arbitraries.integers().between(1, 400).map(digits -> digits / 2.0))
                .as(CauerStage::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(5);
    }

    private static double riseAfter(HeatModel model, int point, double[] start, double[] watts, double seconds) {
        double[] state = start.clone();
        model.advance(state, watts, seconds);
        return model.riseKelvin(point, state, watts);
    }

    private static double seconds(ReachTime time) {
        return time instanceof ReachTime.At at ? at.seconds() : Double.POSITIVE_INFINITY;
    }

    private static double[] watt(int count, int which) {
        return IntStream.range(0, count).mapToDouble(i -> i == which ? 1 : 0).toArray();
    }

    private static double[] repeated(List<Integer> values, int count) {
        return IntStream.range(0, count)
                .mapToDouble(i -> values.get(i % values.size()))
                .toArray();
    }

    private static double greatest(double[] values) {
        return Arrays.stream(values).map(Math::abs).max().orElse(0);
    }
}
