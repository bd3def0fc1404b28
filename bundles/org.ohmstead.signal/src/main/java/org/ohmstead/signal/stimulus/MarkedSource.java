// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.Arrays;
import org.ohmstead.signal.Waveforms;

/** A signal with markers, leader and silences around it. */
final class MarkedSource implements SampleSource {
    private final Stimulus stimulus;
    private final SignalLayout layout;
    private final double[] start;
    private final double[] end;
    private final double peak;

    MarkedSource(Stimulus stimulus, SignalLayout layout, double peakDbfs) {
        this.stimulus = stimulus;
        this.layout = layout;
        this.peak = Levels.ratio(peakDbfs);
        start = new Marker(false).samples(layout.sampleRateHz());
        end = new Marker(true).samples(layout.sampleRateHz());
    }

    @Override
    public void fill(long from, double[] block, int count) {
        Arrays.fill(block, 0, count, 0);
        for (int i = 0; i < count; i++) {
            block[i] = around(from + i);
        }
        long first = Math.max(from, layout.signal());
        long last = Math.min(from + count, layout.signalEnd());
        if (last > first) {
            double[] part = new double[(int) (last - first)];
            stimulus.read(first - layout.signal(), part, part.length);
            System.arraycopy(part, 0, block, (int) (first - from), part.length);
        }
    }

    private double around(long frame) {
        if (frame >= layout.startMarker() && frame - layout.startMarker() < start.length) {
            return peak * start[(int) (frame - layout.startMarker())];
        }
        if (frame >= layout.endMarker() && frame - layout.endMarker() < end.length) {
            return peak * end[(int) (frame - layout.endMarker())];
        }
        if (frame >= layout.leader() && frame < layout.leaderEnd()) {
            return peak
                    * Math.sin(Waveforms.phaseRadians(
                            SignalLayout.LEADER_HZ, frame - layout.leader(), layout.sampleRateHz()));
        }
        return 0;
    }
}
