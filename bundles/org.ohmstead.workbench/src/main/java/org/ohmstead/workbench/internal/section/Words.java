// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

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
        return Texts.text("mode." + mode);
    }

    static String of(PowerKind kind) {
        return Texts.text("power." + kind);
    }

    static String of(SupplyType type) {
        return Texts.text("supplytype." + type);
    }

    static String of(Mounting mounting) {
        return Texts.text("mounting." + mounting);
    }

    static String of(MeterQuantity quantity) {
        return Texts.text("quantity." + quantity);
    }

    static String of(VerdictKind kind) {
        return Texts.text("verdict." + kind);
    }

    static String of(StepTable.EndKind kind) {
        return Texts.text("end." + kind);
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
        return Texts.text("severity." + severity);
    }

    static String of(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return Texts.text("end.distortion", percent(limit.ratio()), of(limit.measure()));
        } else if (endPoint instanceof EndPoint.FixedLevel level) {
            return Texts.text("end.level", Numbers.shown(level.driveDb(), Unit.DECIBEL));
        }
        return Texts.text("end.clipping");
    }

    static String of(Stimulus stimulus) {
        String tone = Numbers.shown(stimulus.frequencyHz(), Unit.HERTZ);
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return Texts.text(
                    "stimulus.burst",
                    Numbers.shown(burst.onSeconds(), Unit.SECOND),
                    Numbers.shown(burst.periodSeconds(), Unit.SECOND),
                    tone);
        }
        return Texts.text("stimulus.continuous", tone);
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
}
