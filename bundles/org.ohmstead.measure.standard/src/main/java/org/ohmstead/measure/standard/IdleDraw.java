// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/** Supply current and power with silent inputs, as the mean of several readings; all of the power turns into heat. */
@Component
public final class IdleDraw implements Measurement {
    private static final Messages TEXTS = Messages.of(IdleDraw.class);

    private static FigureInfo ampsFigure() {
        return new FigureInfo("idleAmps", TEXTS.text("idle.figure.idleAmps"), Unit.AMPERE, false);
    }

    private static FigureInfo wattsFigure() {
        return new FigureInfo("idleWatts", TEXTS.text("idle.figure.idleWatts"), Unit.WATT, false);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.idle-draw",
                "1.0.0",
                TEXTS.text("idle.name"),
                TEXTS.text("idle.summary"),
                List.of("IEC 60268-3, power supply characteristics (the idea; clause text from memory)"),
                Set.of(Ability.SUPPLY_VOLTS, Ability.SUPPLY_AMPS),
                List.of(new Setting.Count(
                        "readings", TEXTS.text("idle.readings"), TEXTS.text("idle.readings.help"), 5, 1, 100)),
                List.of(ampsFigure(), wattsFigure()),
                Duration.ofMinutes(5));
    }

    @Override
    public Readiness readiness(Subject subject) {
        return new Readiness.Ready();
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), 0);
        return benchRun.silentAfter(run -> {
            bench.feed(new Feed.Silence());
            int readings = settings.count("readings");
            double amps = 0;
            double watts = 0;
            double volts = 0;
            for (int i = 0; i < readings; i++) {
                progress.checkpoint();
                progress.at(i / (double) readings, TEXTS.text("idle.progress", String.valueOf(i + 1)));
                Observation shown = bench.observe();
                double nowVolts = SupplyReadings.volts(shown);
                double nowAmps = SupplyReadings.amps(shown);
                volts += nowVolts / readings;
                amps += nowAmps / readings;
                watts += nowVolts * nowAmps / readings;
            }
            OptionalDouble ampsUncertainty = SupplyReadings.uncertainty(subject, MeterQuantity.SUPPLY_AMPS, amps);
            Figure current = Figure.of(ampsFigure(), amps);
            Figure power = Figure.of(wattsFigure(), watts);
            if (ampsUncertainty.isPresent()) {
                current = current.withStandardUncertainty(ampsUncertainty.getAsDouble());
                double voltsUncertainty = SupplyReadings.uncertainty(subject, MeterQuantity.SUPPLY_VOLTS, volts)
                        .orElse(0);
                power = power.withStandardUncertainty(
                        Math.hypot(volts * ampsUncertainty.getAsDouble(), amps * voltsUncertainty));
            }
            return new MeasurementResult(List.of(current, power), Optional.empty(), List.of());
        });
    }
}
