// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.example.offset;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.signal.Waveform;
import org.ohmstead.units.Unit;
import org.osgi.service.component.annotations.Component;

/** Direct volts at the output with silent inputs: the mean of a recording. */
@Component
public final class DcOffset implements Measurement {
    private static final FigureInfo OFFSET = new FigureInfo("offset", "offset", Unit.VOLT, true);
    private static final MeasurementInfo INFO = new MeasurementInfo(
            "org.example.dc-offset",
            "1.0.0",
            "Offset at the output",
            "Records the output with silent inputs and tells its direct volts.",
            List.of(),
            Set.of(Ability.WAVEFORM),
            List.of(new Setting.Number("seconds", "recording", "How long is recorded.", Unit.SECOND, 0.5, 0.1, 10)),
            List.of(OFFSET),
            Duration.ofMinutes(1));

    @Override
    public MeasurementInfo info() {
        return INFO;
    }

    @Override
    public Readiness readiness(Subject subject) {
        return new Readiness.Ready();
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        progress.checkpoint();
        progress.at(0, "recording the output with silent inputs");
        bench.feed(new Feed.Silence());
        Acquisition quiet = bench.acquire(settings.number("seconds"));
        progress.recorded(quiet);
        List<Figure> figures = new ArrayList<>();
        for (Waveform channel : quiet.output().channels()) {
            double sumVolts = 0;
            for (int i = 0; i < channel.size(); i++) {
                sumVolts += channel.voltsAt(i);
            }
            String name = String.valueOf((char) ('A' + figures.size()));
            figures.add(Figure.of(OFFSET, sumVolts / channel.size()).ofChannel(name));
        }
        return new MeasurementResult(figures, Optional.empty(), List.of());
    }
}
