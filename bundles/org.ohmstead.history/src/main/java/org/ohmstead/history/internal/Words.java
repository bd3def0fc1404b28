// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Specimen;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.text.Messages;

/** Numbers as they stand in the sentences of this bundle: point as decimal mark. */
public final class Words {
    private static final Messages TEXTS = Messages.of(Words.class);
    private static final double LARGEST_PLAIN = 1e7;
    private static final double SMALLEST_PLAIN = 1e-6;
    private static final QuantityFormat FIVE = QuantityFormat.digits(5);
    private static final QuantityFormat TWO = QuantityFormat.digits(2);

    private Words() {}

    /** Returns a value with five significant digits, without needless zeros. */
    public static String number(double value) {
        return plain(value, FIVE);
    }

    /** Returns an uncertainty with two significant digits. */
    public static String uncertainty(double value) {
        double size = Math.abs(value);
        return size >= SMALLEST_PLAIN && size < LARGEST_PLAIN ? TWO.format(value) : plain(value, TWO);
    }

    private static String plain(double value, QuantityFormat format) {
        double size = Math.abs(value);
        if (size == 0) {
            return "0";
        }
        if (size < SMALLEST_PLAIN || size >= LARGEST_PLAIN) {
            return String.format(Locale.ROOT, "%.3e", value);
        }
        String text = format.format(value);
        return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
    }

    /** Returns a value with its unit; an empty unit leaves the number alone. */
    public static String quantity(double value, String unit) {
        return with(number(value), unit);
    }

    /** Returns an uncertainty with its unit. */
    public static String uncertainty(double value, String unit) {
        return with(uncertainty(value), unit);
    }

    private static String with(String number, String unit) {
        return unit.isEmpty() ? number : number + " " + unit;
    }

    /** Returns a value with as many decimals as show two significant digits of a scale, such as its uncertainty. */
    public static String to(double value, double scale) {
        double size = Math.abs(scale);
        if (!(size >= SMALLEST_PLAIN && size < LARGEST_PLAIN) || Math.abs(value) >= LARGEST_PLAIN) {
            return number(value);
        }
        int decimals = Math.max(0, 1 - (int) Math.floor(Math.log10(size)));
        return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
    }

    /** Returns the same with the value's unit. */
    public static String to(double value, double scale, String unit) {
        return with(to(value, scale), unit);
    }

    /** Returns how channels meet a load, as it stands in a sentence. */
    public static String mode(Mode mode) {
        return TEXTS.text("mode." + mode.name());
    }

    /** Returns the ohm as it stands behind a number. */
    public static String ohm() {
        return TEXTS.text("unit.ohm");
    }

    /** Returns which amplifier it is, with its serial number when it has one. */
    public static String specimen(Specimen specimen) {
        return specimen.serialNumber().isEmpty()
                ? specimen.amplifier()
                : TEXTS.text("specimen.serial", specimen.amplifier(), specimen.serialNumber());
    }

    /** Returns what a log is called in sentences. */
    public static String log(String name) {
        return TEXTS.text("log.named", name);
    }

    /** Returns a sentence as it goes on behind another word: in English with a small letter. */
    public static String continued(String sentence) {
        boolean english = TEXTS.locale().getLanguage().equals(Locale.ENGLISH.getLanguage());
        return english ? Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1) : sentence;
    }

    /** Returns an end point in words: "1 % THD_F", "clipping onset", "-3 dB drive". */
    public static String endPoint(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return percent(limit.ratio()) + " "
                    + (limit.measure() == DistortionMeasure.THD_PLUS_NOISE_R
                            ? "THD+N"
                            : limit.measure().name());
        }
        return endPoint instanceof EndPoint.FixedLevel level
                ? TEXTS.text("endPoint.level", number(level.driveDb()))
                : TEXTS.text("endPoint.clipping");
    }

    /** Returns a ratio as a percentage with a sign, one decimal: "+4.2 %". */
    public static String signedPercent(double ratio) {
        return String.format(Locale.ROOT, "%+.1f %%", 100 * ratio);
    }

    /** Returns a probability as a percentage without needless zeros: "95 %". */
    public static String percent(double ratio) {
        return number(100 * ratio) + " %";
    }
}
