// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.ohmstead.signal.Waveform;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;

/** Where a recording holds what was played, by the markers around it. */
public sealed interface Alignment {
    /**
     * The markers were found.
     *
     * @param startMarkerSeconds when the start marker begins in the recording, by the recorder's clock
     * @param endMarkerSeconds the same for the end marker; empty when the recording ends before it
     * @param signalFromSeconds when the signal begins
     * @param signalToSeconds when it ends; reckoned from the start alone when the end marker is missing
     * @param clockRatio how many seconds by the recorder's clock one second of the player's lasts; empty without the end marker
     * @param gainRatio amplitude of the start marker in the recording over that in the file, above 0
     * @param inverted whether the polarity is inverted
     * @param match how much of the start marker's surroundings is the marker, 0 to 1; noise and distortion lower it
     */
    record Found(
            double startMarkerSeconds,
            OptionalDouble endMarkerSeconds,
            double signalFromSeconds,
            double signalToSeconds,
            OptionalDouble clockRatio,
            double gainRatio,
            boolean inverted,
            double match)
            implements Alignment {
        /** Returns by how many millionths the player's second is longer than the recorder's; empty without the end marker. */
        public OptionalDouble clockPartsPerMillion() {
            return clockRatio.isPresent() ? OptionalDouble.of(1e6 * (clockRatio.getAsDouble() - 1)) : clockRatio;
        }

        /**
         * Returns the part of a recording that holds the signal, to whole samples; less of it when the recording ends earlier.
         *
         * @throws IllegalArgumentException if the recording ends before the signal begins
         */
        public Waveform signalOf(Waveform recording) {
            int from = (int) Math.max(0, Math.rint(signalFromSeconds * recording.sampleRateHz()));
            int to = (int) Math.min(recording.size(), Math.rint(signalToSeconds * recording.sampleRateHz()));
            return recording.slice(from, to);
        }
    }

    /**
     * The markers were not found, or do not belong to what was played.
     *
     * @param key which case it is
     * @param arguments the figures in the sentence
     */
    record Missed(String key, List<Object> arguments) implements Alignment {
        /** Copies the figures. */
        public Missed {
            arguments = List.copyOf(arguments);
        }

        /** Returns why, and what to do, in the language spoken now. */
        public String sentence() {
            return sentence(Language.current());
        }

        /** Returns why, and what to do, in a language. */
        public String sentence(Locale locale) {
            return Messages.of(Missed.class, locale).text("alignment." + key, arguments.toArray());
        }
    }

    /**
     * Looks for the markers of a file whose layout is known.
     *
     * @param layout of the file that was played
     * @param markerDbfs the level of its markers, for the gain
     * @param recording at any sample rate of 16 kHz or above
     */
    static Alignment find(SignalLayout layout, double markerDbfs, Waveform recording) {
        return new MarkerSearch(recording).align(layout, Levels.ratio(markerDbfs));
    }

    /**
     * Looks for the markers of a file that is there itself.
     *
     * @param played the file's samples
     * @param recording at any sample rate of 16 kHz or above
     */
    static Alignment find(Waveform played, Waveform recording) {
        MarkerSearch original = new MarkerSearch(played);
        MarkerSearch.Hit start = original.first(false, 0);
        MarkerSearch.Hit end = start.match() < MarkerSearch.LEAST_MATCH ? start : original.after(start);
        if (start.match() < MarkerSearch.LEAST_MATCH || end.match() < MarkerSearch.LEAST_MATCH) {
            return new Missed("notMarked", List.of());
        }
        int rate = (int) Math.round(played.sampleRateHz());
        long from = Math.round(start.seconds() * rate);
        long without = SignalLayout.from(rate, from, 1).endMarker() - 1;
        long signalFrames = Math.round(end.seconds() * rate) - without;
        if (signalFrames < 1) {
            return new Missed("notMarked", List.of());
        }
        return new MarkerSearch(recording)
                .align(SignalLayout.from(rate, from, signalFrames), Math.abs(start.amplitude()));
    }
}
