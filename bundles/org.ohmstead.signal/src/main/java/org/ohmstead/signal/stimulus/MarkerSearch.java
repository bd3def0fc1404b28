// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.jtransforms.fft.DoubleFFT_1D;
import org.ohmstead.signal.Waveform;

/**
 * Finds markers in a recording: the correlation with the marker over the root of the energies of both, by transforms of overlapping stretches; the
 * instant to a small part of a sample from the marker's closed form.
 */
final class MarkerSearch {
    static final double LEAST_MATCH = 0.25;
    /** Of several markers that match about as well, the first counts. */
    private static final double AS_GOOD = 0.8;

    private static final double LEAST_RATE = 16_000;
    private static final double MOST_CLOCK_ERROR = 2e-3;
    private static final int MOST_REFINEMENTS = 40;
    private static final double FINEST_SAMPLES = 1e-3;
    private static final int CLOCK_TURNS = 4;

    private final double[] samples;
    private final double[] energies;
    private final double sampleRateHz;

    /**
     * A marker in the recording.
     *
     * @param seconds when it begins
     * @param amplitude its size, below 0 when the polarity is inverted
     * @param match 0 to 1
     */
    record Hit(double seconds, double amplitude, double match) {}

    MarkerSearch(Waveform recording) {
        samples = recording.toArray();
        sampleRateHz = recording.sampleRateHz();
        double mean = Arrays.stream(samples).sum() / samples.length;
        energies = new double[samples.length + 1];
        for (int i = 0; i < samples.length; i++) {
            samples[i] -= mean;
            energies[i + 1] = energies[i] + samples[i] * samples[i];
        }
    }

    Alignment align(SignalLayout layout, double markerPeak) {
        if (sampleRateHz < LEAST_RATE) {
            return new Alignment.Missed("lowRate", List.of(sampleRateHz));
        }
        Hit start = first(false, 0);
        if (start.match() < LEAST_MATCH) {
            return new Alignment.Missed("noStart", List.of());
        }
        double distance = layout.markerDistanceSeconds();
        Hit end = after(start);
        if (end.match() < LEAST_MATCH) {
            return found(layout, refined(start, false, 1), OptionalDouble.empty(), OptionalDouble.empty(), markerPeak);
        }
        double ratio = 1;
        for (int turn = 0; turn < CLOCK_TURNS; turn++) {
            start = refined(start, false, ratio);
            end = refined(end, true, ratio);
            ratio = (end.seconds() - start.seconds()) / distance;
            if (Math.abs(ratio - 1) > MOST_CLOCK_ERROR) {
                return new Alignment.Missed("otherFile", List.of(end.seconds() - start.seconds(), distance));
            }
        }
        return found(layout, start, OptionalDouble.of(end.seconds()), OptionalDouble.of(ratio), markerPeak);
    }

    private static Alignment.Found found(
            SignalLayout layout, Hit start, OptionalDouble end, OptionalDouble ratio, double markerPeak) {
        double from = start.seconds() + ratio.orElse(1) * layout.signalAfterMarkerSeconds();
        return new Alignment.Found(
                start.seconds(),
                end,
                from,
                from + ratio.orElse(1) * layout.signalSeconds(),
                ratio,
                Math.abs(start.amplitude()) / markerPeak,
                start.amplitude() < 0,
                start.match());
    }

    /** The first marker of its kind after a time, refined at equal clocks; with match 0 when the recording is too short. */
    Hit first(boolean end, double fromSeconds) {
        Marker marker = new Marker(end);
        double[] pattern = marker.samples(sampleRateHz);
        int from = (int) Math.ceil(fromSeconds * sampleRateHz);
        if (samples.length - from < pattern.length) {
            return new Hit(fromSeconds, 0, 0);
        }
        double[] matches = matches(pattern, from);
        double best = 0;
        for (double match : matches) {
            best = Math.max(best, Math.abs(match));
        }
        int place = 0;
        while (Math.abs(matches[place]) < AS_GOOD * best) {
            place++;
        }
        // The first that is good enough may lie before the top of its own peak.
        for (int i = place; i < Math.min(matches.length, place + pattern.length); i++) {
            place = Math.abs(matches[i]) > Math.abs(matches[place]) ? i : place;
        }
        return refined(new Hit((from + place) / sampleRateHz, matches[place], Math.abs(matches[place])), end, 1);
    }

    /** The first end marker after a start marker. */
    Hit after(Hit start) {
        return first(true, start.seconds() + Marker.SECONDS);
    }

    private double[] matches(double[] pattern, int from) {
        int size = Integer.highestOneBit(4 * pattern.length) * 2;
        DoubleFFT_1D transform = new DoubleFFT_1D(size);
        double[] reference = Arrays.copyOf(pattern, size);
        transform.realForward(reference);
        double patternEnergy = 0;
        for (double value : pattern) {
            patternEnergy += value * value;
        }
        int places = samples.length - from - pattern.length + 1;
        int useful = size - pattern.length + 1;
        double[] matches = new double[places];
        for (int start = 0; start < places; start += useful) {
            double[] stretch = Arrays.copyOfRange(samples, from + start, from + start + size);
            transform.realForward(stretch);
            multiplyByConjugate(stretch, reference);
            transform.realInverse(stretch, true);
            for (int i = 0; i < Math.min(useful, places - start); i++) {
                int at = from + start + i;
                double energy = energies[at + pattern.length] - energies[at];
                matches[start + i] =
                        energy > 1e-20 * energies[samples.length] ? stretch[i] / Math.sqrt(energy * patternEnergy) : 0;
            }
        }
        return matches;
    }

    private static void multiplyByConjugate(double[] values, double[] reference) {
        values[0] *= reference[0];
        values[1] *= reference[1];
        for (int i = 2; i < values.length; i += 2) {
            double real = values[i] * reference[i] + values[i + 1] * reference[i + 1];
            values[i + 1] = values[i + 1] * reference[i] - values[i] * reference[i + 1];
            values[i] = real;
        }
    }

    /** The instant at which the marker, stretched by the ratio of the clocks, fits best: parabolas through three places, closer each time. */
    private Hit refined(Hit hit, boolean end, double ratio) {
        double sign = Math.signum(hit.amplitude());
        double at = hit.seconds();
        double step = 0.5 / sampleRateHz;
        for (int i = 0; i < MOST_REFINEMENTS && step * sampleRateHz > FINEST_SAMPLES; i++) {
            double before = sign * product(end, at - step, ratio);
            double here = sign * product(end, at, ratio);
            double behind = sign * product(end, at + step, ratio);
            double bend = before - 2 * here + behind;
            double move = bend < 0 ? 0.5 * step * (before - behind) / bend : Math.signum(behind - before) * step;
            at += Math.max(-2 * step, Math.min(2 * step, move));
            step *= Math.abs(move) > step ? 1 : 0.3;
        }
        return new Hit(at, product(end, at, ratio) / energy(ratio), hit.match());
    }

    private double energy(double ratio) {
        Marker marker = new Marker(false);
        int count = (int) Math.ceil(Marker.SECONDS * ratio * sampleRateHz);
        double sum = 0;
        for (int i = 0; i < count; i++) {
            double value = marker.at(i / sampleRateHz / ratio);
            sum += value * value;
        }
        return sum;
    }

    private double product(boolean end, double seconds, double ratio) {
        Marker marker = new Marker(end);
        int first = (int) Math.max(0, Math.ceil(seconds * sampleRateHz));
        int last = (int) Math.min(samples.length - 1.0, Math.floor((seconds + ratio * Marker.SECONDS) * sampleRateHz));
        double sum = 0;
        for (int i = first; i <= last; i++) {
            sum += samples[i] * marker.at((i / sampleRateHz - seconds) / ratio);
        }
        return sum;
    }
}
