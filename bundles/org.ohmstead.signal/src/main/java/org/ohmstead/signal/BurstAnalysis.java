// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Evaluates a tone inside its bursts, over whole cycles. */
final class BurstAnalysis {
    private static final int MOST_BURSTS = 200;
    /** How far the found edges may be off, in cycles. */
    private static final double EDGE_TOLERANCE_CYCLES = 0.15;

    private final double[] samples;
    private final double sampleRateHz;
    private final double radiansPerSample;
    private final AnalysisSettings settings;
    private final BurstTrain train;
    private final List<String> notes = new ArrayList<>();

    BurstAnalysis(
            double[] samples,
            double sampleRateHz,
            double radiansPerSample,
            AnalysisSettings settings,
            BurstTrain train) {
        this.samples = samples;
        this.sampleRateHz = sampleRateHz;
        this.radiansPerSample = radiansPerSample;
        this.settings = settings;
        this.train = train;
    }

    private double cyclesOf(BurstTrain.Stretch stretch) {
        return stretch.length() * radiansPerSample / (2 * Math.PI);
    }

    private int wholeCyclesOf(BurstTrain.Stretch stretch) {
        return (int) Math.floor(cyclesOf(stretch) + EDGE_TOLERANCE_CYCLES);
    }

    /** Returns the figures, or nothing (and a note) if no burst holds a whole cycle. */
    Optional<ChannelAnalysis> result(List<String> outerNotes) throws CaptureException {
        List<BurstTrain.Stretch> usable = usableStretches();
        if (usable.isEmpty()) {
            BurstTrain.Stretch first = train.stretches().get(0);
            outerNotes.add(Texts.say(
                    "note.noWholeCycle",
                    Digits.of(1000 * first.length() / sampleRateHz, 3),
                    Digits.of(cyclesOf(first), 2),
                    Digits.of(radiansPerSample * sampleRateHz / (2 * Math.PI), 4)));
            return Optional.empty();
        }
        notes.addAll(outerNotes);
        boolean hinted = settings.frequencyHz().isPresent();
        SteadyTone firstTone = null;
        double sum = 0;
        int count = 0;
        for (BurstTrain.Stretch stretch : usable.subList(0, Math.min(MOST_BURSTS, usable.size()))) {
            SteadyTone tone = evaluate(stretch);
            if (!tone.isTone(hinted)) {
                return Optional.empty();
            }
            firstTone = firstTone == null ? tone : firstTone;
            sum += tone.powerWatts();
            count++;
        }
        if (firstTone == null) {
            return Optional.empty();
        }
        BurstTrain.Stretch first = usable.get(0);
        noteShortBurst(first);
        Burst burst = new Burst(
                first.from() / sampleRateHz,
                medianLength(usable) / sampleRateHz,
                seconds(train.periodSamples()),
                first.whole() ? usable.size() : 0,
                wholeCyclesOf(first),
                sum / count,
                meanPowerWatts());
        return Optional.of(firstTone.result(Optional.of(burst), notes));
    }

    private OptionalDouble seconds(OptionalDouble sampleCount) {
        return sampleCount.isPresent()
                ? OptionalDouble.of(sampleCount.getAsDouble() / sampleRateHz)
                : OptionalDouble.empty();
    }

    private List<BurstTrain.Stretch> usableStretches() {
        List<BurstTrain.Stretch> whole = train.stretches().stream()
                .filter(BurstTrain.Stretch::whole)
                .filter(stretch -> wholeCyclesOf(stretch) >= 1)
                .toList();
        if (!whole.isEmpty()) {
            return whole;
        }
        List<BurstTrain.Stretch> parts = train.stretches().stream()
                .filter(stretch -> wholeCyclesOf(stretch) >= 1)
                .sorted((a, b) -> Double.compare(b.length(), a.length()))
                .limit(1)
                .toList();
        if (!parts.isEmpty()) {
            notes.add(Texts.say("note.insideBurst"));
        }
        return parts;
    }

    private static double medianLength(List<BurstTrain.Stretch> stretches) {
        double[] lengths = stretches.stream()
                .mapToDouble(BurstTrain.Stretch::length)
                .sorted()
                .toArray();
        return lengths[lengths.length / 2];
    }

    private void noteShortBurst(BurstTrain.Stretch stretch) {
        int cycles = wholeCyclesOf(stretch);
        if (cycles < 3) {
            notes.add(Texts.counted("note.shortBurst", cycles, cycles));
        }
    }

    private SteadyTone evaluate(BurstTrain.Stretch stretch) throws CaptureException {
        int cycles = wholeCyclesOf(stretch);
        double period = 2 * Math.PI / radiansPerSample;
        if (cycles < 3) {
            double[] inside = strongest(stretch, (int) Math.rint(cycles * period));
            return new SteadyTone(
                    inside, sampleRateHz, SteadyTone.fit(inside, radiansPerSample, false, settings), settings);
        }
        // The edges are known to a tenth of a cycle, and filters ring there: keep off them when there is room.
        double margin = period * (cycles >= 8 ? 1 : cycles >= 4 ? 0.4 : 0.1);
        int from = (int) Math.ceil(stretch.from() + (stretch.from() > 0 ? margin : 0));
        int to = (int) Math.floor(stretch.to() - (stretch.to() < samples.length ? margin : 0));
        double[] inside = Arrays.copyOfRange(samples, from, Math.min(samples.length, to));
        return new SteadyTone(inside, sampleRateHz, SteadyTone.fit(inside, radiansPerSample, true, settings), settings);
    }

    /** The given number of samples in or near a stretch that hold the most energy. */
    private double[] strongest(BurstTrain.Stretch stretch, int count) {
        int slack = (int) Math.ceil(0.3 * 2 * Math.PI / radiansPerSample);
        int lowest = (int) Math.max(0, Math.floor(stretch.from()) - slack);
        int highest = (int) Math.min(samples.length - count, Math.ceil(stretch.to()) - count + slack);
        double energy = 0;
        for (int i = lowest; i < lowest + count; i++) {
            energy += samples[i] * samples[i];
        }
        double best = energy;
        int bestFrom = lowest;
        for (int from = lowest + 1; from <= highest; from++) {
            energy += samples[from + count - 1] * samples[from + count - 1] - samples[from - 1] * samples[from - 1];
            if (energy > best) {
                best = energy;
                bestFrom = from;
            }
        }
        return Arrays.copyOfRange(samples, bestFrom, bestFrom + count);
    }

    /** Mean power over whole burst periods, cut where the tone is low; without a period, over the record. */
    private double meanPowerWatts() {
        int from = 0;
        int to = samples.length;
        if (train.periodSamples().isPresent()) {
            double period = train.periodSamples().getAsDouble();
            double wanted = startInGap(period);
            double whole = Math.floor((samples.length - wanted) / period + 1e-3);
            if (whole < 1) {
                wanted = 0;
                whole = Math.max(1, Math.floor(samples.length / period));
            }
            from = (int) Math.rint(wanted);
            to = (int) Math.min(samples.length, Math.rint(wanted + whole * period));
        }
        double mean = 0;
        for (int i = from; i < to; i++) {
            mean += samples[i] / (to - from);
        }
        double square = 0;
        for (int i = from; i < to; i++) {
            square += (samples[i] - mean) * (samples[i] - mean);
        }
        double frequencyHz = radiansPerSample * sampleRateHz / (2 * Math.PI);
        return settings.load().realPowerWatts(Math.sqrt(square / (to - from)), frequencyHz);
    }

    private double startInGap(double period) {
        BurstTrain.Stretch first = train.stretches().get(0);
        double gapMiddle = first.to() + 0.5 * (period - first.length());
        double start = first.from() > 0 ? gapMiddle - period : gapMiddle;
        return Math.max(0, start);
    }
}
