// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Reading;

/** The powers of a reading as figures. */
final class PowerFigures {
    private PowerFigures() {}

    static List<Figure> of(FigureInfo info, Reading reading) {
        return reading.channels().stream()
                .map(channel -> new Figure(
                        info.id(),
                        channel.channel(),
                        "",
                        channel.powerWatts(),
                        info.unit(),
                        OptionalDouble.of(channel.standardUncertaintyWatts())))
                .toList();
    }

    /** The power of a channel as a figure, with its uncertainty where the project has the meters for one. */
    static Figure of(FigureInfo info, Subject subject, int channel, EndPointResult result, BudgetSetting setting)
            throws MeasurementException {
        Figure figure = Figure.of(info, result.powerWatts())
                .ofChannel(LevelAnalysis.channelName(subject.step().mode(), channel));
        if (!(StandardReadiness.forPower(subject) instanceof Readiness.Ready)) {
            return figure;
        }
        try {
            return figure.withStandardUncertainty(
                    PowerUncertainty.of(result, subject.load().branches().get(channel), setting)
                            .combinedWatts());
        } catch (EvaluationException e) {
            throw Faults.passedOn(e);
        }
    }
}
