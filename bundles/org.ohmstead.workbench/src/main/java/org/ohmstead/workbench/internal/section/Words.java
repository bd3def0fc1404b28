// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.Locale;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.look.Numbers;

/** What the choices of the model are called on the screen. */
final class Words {
    private Words() {}

    static String of(Mode mode) {
        return mode.name().toLowerCase(Locale.ROOT);
    }

    static String of(PowerKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    static String of(SupplyType type) {
        return switch (type) {
            case UNREGULATED -> "unregulated";
            case REGULATED -> "regulated";
            case DIRECT -> "no converter";
            case UNKNOWN -> "not known";
        };
    }

    static String of(Mounting mounting) {
        return switch (mounting) {
            case FREE_AIR -> "free air";
            case HEAT_SINK -> "heat sink";
            case HEAT_SINK_WITH_FAN -> "heat sink, fan";
        };
    }

    static String of(MeterQuantity quantity) {
        return switch (quantity) {
            case OUTPUT_VOLTS -> "output volts";
            case SUPPLY_VOLTS -> "supply volts";
            case SUPPLY_AMPS -> "supply amperes";
            case LOAD_OHMS -> "load ohms";
            case TEMPERATURE_CELSIUS -> "temperature";
        };
    }

    static String of(VerdictKind kind) {
        return switch (kind) {
            case SIMPLE_ACCEPTANCE -> "simple acceptance";
            case GUARDED_ACCEPTANCE -> "guarded acceptance";
            case GUARDED_REJECTION -> "guarded rejection";
        };
    }

    /** Returns the sign of the unit that a meter of a quantity reads in. */
    static String unitOf(MeterQuantity quantity) {
        return switch (quantity) {
            case OUTPUT_VOLTS, SUPPLY_VOLTS -> Unit.VOLT.symbol();
            case SUPPLY_AMPS -> Unit.AMPERE.symbol();
            case LOAD_OHMS -> Unit.OHM.symbol();
            case TEMPERATURE_CELSIUS -> Unit.CELSIUS.symbol();
        };
    }

    static String of(DistortionMeasure measure) {
        return switch (measure) {
            case THD_F -> "THD_F";
            case THD_R -> "THD_R";
            case THD_PLUS_NOISE_R -> "THD+N";
        };
    }

    static String of(Severity severity) {
        return severity.name().charAt(0) + severity.name().substring(1).toLowerCase(Locale.ROOT);
    }

    static String of(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return percent(limit.ratio()) + " " + of(limit.measure());
        } else if (endPoint instanceof EndPoint.FixedLevel level) {
            return "level " + Numbers.shown(level.driveDb(), Unit.DECIBEL);
        }
        return "clipping onset";
    }

    static String of(Stimulus stimulus) {
        String tone = Numbers.shown(stimulus.frequencyHz(), Unit.HERTZ);
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return "burst of " + Numbers.shown(burst.onSeconds(), Unit.SECOND) + " every "
                    + Numbers.shown(burst.periodSeconds(), Unit.SECOND) + ", " + tone;
        }
        return "continuous, " + tone;
    }

    static String percent(double ratio) {
        return Numbers.shown(ratio * 100, Unit.PERCENT);
    }

    static String number(double value) {
        return Numbers.shown(value);
    }

    static String ohms(double value) {
        return Numbers.shown(value, Unit.OHM);
    }

    static String volts(double value) {
        return Numbers.shown(value, Unit.VOLT);
    }

    static String watts(double value) {
        return Numbers.shown(value, Unit.WATT);
    }

    static String amperes(double value) {
        return Numbers.shown(value, Unit.AMPERE);
    }

    /** Returns "1 rating", "3 ratings". */
    static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }
}
