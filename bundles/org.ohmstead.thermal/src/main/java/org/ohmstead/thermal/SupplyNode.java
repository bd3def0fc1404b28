// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;
import org.ohmstead.units.text.Messages;

/**
 * A supply with a cable: what arrives at the far end. Closed forms; the cable's resistance is that of the moment
 * ({@link SupplyFeed} finds it for a cable that has warmed up).
 *
 * @param source the supply or battery
 * @param cableOhms of the cable, there and back, at least 0
 */
public record SupplyNode(SupplySource source, double cableOhms) {
    private static final Messages TEXTS = Messages.of(SupplyNode.class);

    public SupplyNode {
        Checks.present(source, "source");
        Checks.notNegative(cableOhms, "cableOhms");
    }

    /** Returns the resistance of supply and cable together in ohms. */
    public double totalOhms() {
        return source.sourceOhms() + cableOhms;
    }

    /**
     * Returns the most power that any load can get at the end of the cable, in watts: V^2 / (4 R); empty without a
     * resistance.
     */
    public OptionalDouble highestWatts() {
        double volts = source.openVolts();
        return totalOhms() > 0 ? OptionalDouble.of(volts * volts / (4 * totalOhms())) : OptionalDouble.empty();
    }

    /** Returns what a demand leads to. */
    public SupplyAnswer answer(SupplyDemand demand) {
        Checks.present(demand, "demand");
        if (demand instanceof SupplyDemand.ConstantPower power) {
            return constantPower(power.watts());
        }
        if (demand instanceof SupplyDemand.ConstantCurrent current) {
            return constantCurrent(current.amps());
        }
        return stage((SupplyDemand.Stage) demand);
    }

    /**
     * Of the two currents that give V I - R I^2 = P the smaller one, by the form that keeps its digits when R is
     * small.
     */
    private SupplyAnswer constantPower(double watts) {
        double volts = source.openVolts();
        double rest = volts * volts - 4 * totalOhms() * watts;
        if (rest < 0) {
            return tooMuch("supply.tooMuch.watts", watts);
        }
        double amps = 2 * watts / (volts + Math.sqrt(rest));
        return limits(amps) ? inLimit(amps, OptionalDouble.empty()) : delivered(amps);
    }

    private SupplyAnswer constantCurrent(double amps) {
        if (totalOhms() * amps >= source.openVolts()) {
            return tooMuch("supply.tooMuch.amps", amps);
        }
        return limits(amps) ? inLimit(amps, OptionalDouble.empty()) : delivered(amps);
    }

    private SupplyAnswer stage(SupplyDemand.Stage stage) {
        double amps = Math.max(0, source.openVolts() - stage.offsetVolts()) / (totalOhms() + stage.ohms());
        if (!limits(amps)) {
            return delivered(amps);
        }
        double limit = source.limitAmps().getAsDouble();
        return inLimit(amps, OptionalDouble.of(stage.offsetVolts() + limit * stage.ohms()));
    }

    private boolean limits(double amps) {
        return source.limitAmps().isPresent() && amps > source.limitAmps().getAsDouble();
    }

    private SupplyAnswer delivered(double amps) {
        double output = source.openVolts() - source.sagVolts(amps);
        double drop = amps * cableOhms;
        return new SupplyAnswer.Delivered(
                amps, Math.max(0, output - drop), output, drop, drop * amps, source.sagVolts(amps) * amps);
    }

    private SupplyAnswer inLimit(double amps, OptionalDouble terminalVolts) {
        double limit = source.limitAmps().orElseThrow();
        double highest = limit * Math.max(0, source.openVolts() - totalOhms() * limit);
        String wanted = SupplyFigures.three(amps);
        String reason = terminalVolts.isPresent()
                ? TEXTS.text(
                        "supply.folds",
                        wanted,
                        SupplyFigures.three(limit),
                        SupplyFigures.three(terminalVolts.getAsDouble()))
                : TEXTS.text("supply.folds.stops", wanted, SupplyFigures.three(limit));
        return new SupplyAnswer.InLimit(
                limit, terminalVolts, highest, reason, TEXTS.text("supply.folds.remedy", SupplyFigures.three(highest)));
    }

    private SupplyNoSolution tooMuch(String key, double wanted) {
        return new SupplyNoSolution(
                TEXTS.text(
                        key,
                        SupplyFigures.three(wanted),
                        SupplyFigures.three(source.openVolts()),
                        SupplyFigures.three(1000 * totalOhms()),
                        SupplyFigures.three(highestWatts().orElseThrow())),
                TEXTS.text("supply.tooMuch.remedy"));
    }
}
