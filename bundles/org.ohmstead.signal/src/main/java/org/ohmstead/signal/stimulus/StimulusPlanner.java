// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.signal.Waveforms.BurstPattern;

/** Works out how each kind of signal is made at a sample rate. */
final class StimulusPlanner {
    private static final int MOST_FRAMES_FOR_PEAK = 1 << 18;
    private static final double LARGE_CHANGE = 0.001;
    /** How far a burst's frequency may be moved for the sake of whole cycles. */
    private static final double MOST_BURST_CHANGE = 0.02;

    private static final double WHOLE = 1e-6;

    private final int rate;
    private final boolean wholeCycles;
    private final List<StimulusRemark> remarks = new ArrayList<>();

    StimulusPlanner(int rate, boolean wholeCycles) {
        this.rate = rate;
        this.wholeCycles = wholeCycles;
    }

    Stimulus.Plan plan(TestSignal signal) {
        if (signal instanceof TestSignal.Sine sine) {
            return sine(sine.frequencyHz(), sine.levelDbfs(), sine.durationSeconds());
        }
        if (signal instanceof TestSignal.WarmUp warmUp) {
            return sine(warmUp.frequencyHz(), warmUp.levelDbfs(), warmUp.durationSeconds());
        }
        if (signal instanceof TestSignal.MultiTone tones) {
            return multiTone(tones);
        }
        if (signal instanceof TestSignal.TwoTone pair) {
            return twoTone(pair);
        }
        if (signal instanceof TestSignal.SteppedSweep steps) {
            return steppedSweep(steps);
        }
        if (signal instanceof TestSignal.LogSweep sweep) {
            return logSweep(sweep);
        }
        if (signal instanceof TestSignal.ToneBursts bursts) {
            return bursts(bursts);
        }
        return noise((TestSignal.PinkNoise) signal);
    }

    private long frames(double seconds) {
        return Math.max(1, Math.round(seconds * rate));
    }

    /** The nearest frequency with whole cycles in a length; the frequency itself where none is wanted or none fits. */
    private double snapped(double hertz, long frames) {
        double cycles = Math.rint(hertz * frames / rate);
        boolean fits = wholeCycles && cycles >= 1 && cycles < 0.5 * frames;
        double moved = fits ? cycles * rate / frames : hertz;
        if (Math.abs(moved / hertz - 1) > LARGE_CHANGE) {
            remarks.add(StimulusRemark.note("frequencyMoved", hertz, moved));
        }
        return moved;
    }

    private boolean whole(double hertz, long frames) {
        double cycles = hertz * frames / rate;
        return Math.abs(cycles - Math.rint(cycles)) < WHOLE;
    }

    private Stimulus.Plan plan(SampleSource source, long frames, StimulusFacts facts) {
        if (facts.peakDbfs() > 1e-9) {
            remarks.add(0, StimulusRemark.refusal("overFullScale", facts.peakDbfs()));
        }
        if (!facts.seamless()) {
            remarks.add(StimulusRemark.note("notSeamless"));
        }
        return new Stimulus.Plan(source, frames, facts, List.copyOf(remarks));
    }

    private Stimulus.Plan sine(double frequencyHz, double levelDbfs, double seconds) {
        long frames = frames(seconds);
        double hertz = snapped(frequencyHz, frames);
        return plan(
                ToneSource.single(rate, hertz, Levels.ratio(levelDbfs)),
                frames,
                new StimulusFacts(levelDbfs, levelDbfs, List.of(hertz), whole(hertz, frames)));
    }

    private Stimulus.Plan multiTone(TestSignal.MultiTone tones) {
        long frames = frames(tones.durationSeconds());
        int count = tones.tones().size();
        double[] hertz = new double[count];
        double[] shares = new double[count];
        double power = 0;
        for (int i = 0; i < count; i++) {
            hertz[i] = snapped(tones.tones().get(i).frequencyHz(), frames);
            shares[i] = Math.pow(10, tones.tones().get(i).relativeDb() / 10);
            power += shares[i];
        }
        double[] peaks = new double[count];
        for (int i = 0; i < count; i++) {
            shares[i] /= power;
            // The RMS value of a sine is its peak over root two, as that of 0 dBFS is.
            peaks[i] = Levels.ratio(tones.levelDbfs()) * Math.sqrt(shares[i]);
        }
        ToneSource source = new LowCrest(rate, hertz, peaks, frames).source(shares);
        double peakDbfs = Levels.db(peak(source, frames));
        return plan(
                source, frames, new StimulusFacts(tones.levelDbfs(), peakDbfs, list(hertz), allWhole(hertz, frames)));
    }

    private static double peak(SampleSource source, long frames) {
        return LowCrest.peak(source, (int) Math.min(frames, MOST_FRAMES_FOR_PEAK));
    }

    private boolean allWhole(double[] hertz, long frames) {
        for (double each : hertz) {
            if (!whole(each, frames)) {
                return false;
            }
        }
        return true;
    }

    private static List<Double> list(double[] values) {
        List<Double> list = new ArrayList<>();
        for (double value : values) {
            list.add(value);
        }
        return list;
    }

    private Stimulus.Plan twoTone(TestSignal.TwoTone pair) {
        long frames = frames(pair.durationSeconds());
        double[] hertz = {snapped(pair.lowHz(), frames), snapped(pair.highHz(), frames)};
        double both = Levels.ratio(pair.levelDbfs());
        double low = both * pair.lowToHighRatio() / (1 + pair.lowToHighRatio());
        double high = both - low;
        double rmsDbfs = Levels.db(Math.hypot(low, high));
        return plan(
                new ToneSource(rate, hertz, new double[] {low, high}, new double[2]),
                frames,
                new StimulusFacts(rmsDbfs, pair.levelDbfs(), list(hertz), allWhole(hertz, frames)));
    }

    private Stimulus.Plan steppedSweep(TestSignal.SteppedSweep steps) {
        int stepFrames = (int) frames(steps.stepSeconds());
        List<Double> wanted = steps.frequenciesHz();
        double[] hertz = new double[wanted.size()];
        for (int i = 0; i < hertz.length; i++) {
            hertz[i] = snapped(wanted.get(i), stepFrames);
        }
        if (remarks.size() > 1) {
            int moved = remarks.size();
            remarks.clear();
            remarks.add(StimulusRemark.note("stepsMoved", moved, hertz.length, 100 * LARGE_CHANGE));
        }
        return plan(
                new StepSource(rate, stepFrames, hertz, Levels.ratio(steps.levelDbfs())),
                (long) stepFrames * hertz.length,
                new StimulusFacts(steps.levelDbfs(), steps.levelDbfs(), list(hertz), allWhole(hertz, stepFrames)));
    }

    private Stimulus.Plan logSweep(TestSignal.LogSweep sweep) {
        long frames = frames(sweep.durationSeconds());
        double rmsDbfs = sweep.levelDbfs() + 10 * Math.log10(SweepSource.meanSquareRatio(sweep));
        return plan(
                new SweepSource(sweep, rate, frames),
                frames,
                new StimulusFacts(
                        rmsDbfs,
                        sweep.levelDbfs(),
                        List.of(sweep.fromHz(), sweep.toHz()),
                        sweep.fadeInSeconds() > 0 && sweep.fadeOutSeconds() > 0));
    }

    private Stimulus.Plan bursts(TestSignal.ToneBursts bursts) {
        BurstPattern pattern = bursts.pattern();
        long onFrames = frames(pattern.onSeconds());
        long periodFrames = frames(pattern.periodSeconds());
        double hertz = bursts.frequencyHz();
        double inBurst = snapped(hertz, onFrames);
        remarks.clear();
        if (Math.abs(inBurst / hertz - 1) <= MOST_BURST_CHANGE && whole(inBurst, periodFrames)) {
            hertz = inBurst;
        } else if (Math.abs(snapped(hertz, periodFrames) / hertz - 1) <= MOST_BURST_CHANGE) {
            remarks.clear();
            hertz = snapped(hertz, periodFrames);
        }
        remarkCycles(hertz, pattern);
        long frames = frames(bursts.durationSeconds());
        if (wholeCycles) {
            double periods = Math.max(1, Math.rint(bursts.durationSeconds() / pattern.periodSeconds()));
            frames = frames(periods * pattern.periodSeconds());
        }
        double meanDb = 10 * Math.log10(bursts.meanPowerRatio());
        boolean seamless = whole(hertz, frames) && whole(1 / pattern.periodSeconds(), frames);
        return plan(
                new BurstSource(ToneSource.single(rate, hertz, Levels.ratio(bursts.levelDbfs())), pattern, rate),
                frames,
                new StimulusFacts(bursts.levelDbfs() + meanDb, bursts.levelDbfs(), List.of(hertz), seamless));
    }

    private void remarkCycles(double hertz, BurstPattern pattern) {
        double cycles = hertz * pattern.onSeconds();
        double milliseconds = 1000 * pattern.onSeconds();
        double whole = Math.max(1, Math.rint(cycles));
        if (cycles < 1 - WHOLE) {
            remarks.add(0, StimulusRemark.note("burstShort", milliseconds, cycles, hertz, 1000 / hertz));
        } else if (Math.abs(cycles - Math.rint(cycles)) > 1e-3) {
            remarks.add(
                    0,
                    StimulusRemark.note(
                            "burstParts",
                            milliseconds,
                            cycles,
                            hertz,
                            whole / pattern.onSeconds(),
                            1000 * whole / hertz));
        }
    }

    private Stimulus.Plan noise(TestSignal.PinkNoise noise) {
        long frames = Math.max(2, frames(noise.durationSeconds()));
        int period = (int) Math.min(NoiseSource.LONGEST_PERIOD, frames - frames % 2);
        if (wholeCycles) {
            frames = Math.max(1, Math.round((double) frames / period)) * period;
        }
        NoiseSource source = NoiseSource.of(noise, rate, period);
        double peakDbfs = Levels.db(source.peak());
        double reached = peakDbfs - noise.levelDbfs() + Levels.SINE_CREST_DB;
        if (frames > period) {
            remarks.add(StimulusRemark.note("noiseRepeats", (double) period / rate));
        }
        if (Math.abs(reached - noise.crestFactorDb()) > 0.05) {
            remarks.add(0, StimulusRemark.note("crestMissed", noise.crestFactorDb(), reached));
        }
        return plan(
                source,
                frames,
                new StimulusFacts(
                        noise.levelDbfs(), peakDbfs, List.of(noise.lowHz(), noise.highHz()), frames % period == 0));
    }
}
