// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.text.Messages;

/** What a set-up means, in sentences for the technician, in the language of some messages. */
public final class GainWords {
    private static final int DIGITS = 3;
    /** A level that is called low enough for a first set-up lies at most at this, in watts. */
    private static final double LOW_WATTS = 5;

    private static final double PER_CENT = 100;
    private static final int DECIMALS_OF_DB = 2;

    private final Messages messages;
    private final char decimalMark;

    private GainWords(Messages messages, char decimalMark) {
        this.messages = messages;
        this.decimalMark = decimalMark;
    }

    /** Speaks the language that is chosen now, with its decimal sign. */
    public static GainWords current() {
        return of(Messages.of(GainWords.class));
    }

    /** Speaks a language, with its decimal sign. */
    public static GainWords of(Locale locale) {
        return of(Messages.of(GainWords.class, locale));
    }

    private static GainWords of(Messages messages) {
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(messages.locale());
        return new GainWords(messages, symbols.getDecimalSeparator());
    }

    /** Speaks the same language with a decimal comma, or else a point. */
    public GainWords withDecimalComma(boolean comma) {
        return new GainWords(messages, comma ? ',' : '.');
    }

    /** Says in one sentence what to set. */
    public String summary(GainSetup setup) {
        return messages.text(
                "summary",
                db(setup.gainDb()),
                number(setup.sensitivityVoltsRms()),
                db(setup.endPointDbfs()),
                number(setup.target().powerWatts()),
                number(setup.target().loadOhms()));
    }

    /** Says what a sine at full scale would do. */
    public String fullScale(GainSetup setup) {
        FullScaleDemand demand = setup.fullScaleDemand();
        if (demand.clipped().isEmpty()) {
            return messages.text("fullScale.clean", number(demand.voltsRms()), number(demand.powerWatts()));
        }
        Overdrive wave = demand.clipped().get();
        return messages.text(
                "fullScale.clips",
                number(demand.voltsRms()),
                number(demand.powerWatts()),
                db(demand.beyondClipDb()),
                number(demand.clippedPowerWatts()),
                number(PER_CENT * wave.thdFRatio()));
    }

    /** Says how to set the gain at low power. */
    public String procedure(MeterCheck check) {
        if (!check.playable()) {
            return messages.text("procedure.tooLoud", db(check.sourceLevelDbfs()));
        }
        return messages.text(
                "procedure",
                db(check.sourceLevelDbfs()),
                number(check.sourceVoltsRms()),
                number(check.outputVoltsRms()),
                number(check.powerWatts()),
                db(-check.relativeDb()));
    }

    /**
     * Says what to do about the gain when it is changed by so many dB, below 0 to turn it down.
     *
     * @param changeDb what {@link MeterCheck#gainChangeDb} or a difference of gains says
     * @param closeEnoughDb at most how far off is well enough, at least 0
     */
    public String change(double changeDb, double closeEnoughDb) {
        if (Math.abs(changeDb) <= closeEnoughDb) {
            return messages.text("change.none", db(Math.abs(changeDb)));
        }
        return messages.text(changeDb < 0 ? "change.down" : "change.up", db(Math.abs(changeDb)));
    }

    /** Says how alike channels are. */
    public String balance(ChannelBalance balance) {
        String key = balance.matched() ? "balance.matched" : "balance.apart";
        return messages.text(
                key,
                balance.loudest().name(),
                db(balance.spreadDb()),
                balance.softest().name(),
                number(balance.powerRatio()),
                db(balance.toleranceDb()));
    }

    /**
     * Returns what to beware of: first what the set-up itself asks for, then what always holds when a gain is set.
     *
     * @param check the level at which the gain is set
     */
    public List<String> cautions(GainSetup setup, MeterCheck check) {
        List<String> cautions = new ArrayList<>();
        if (!setup.endPointReached()) {
            cautions.add(messages.text("caution.weak", db(-setup.overlapDb())));
        }
        if (setup.amplifierHeadroomDb() < 0) {
            cautions.add(messages.text("caution.beyondClip", db(-setup.amplifierHeadroomDb())));
        }
        setup.fullScaleDemand()
                .clipped()
                .ifPresent(wave -> cautions.add(messages.text("caution.clipped", number(wave.powerRatio()))));
        if (check.powerWatts() > LOW_WATTS) {
            cautions.add(messages.text("caution.loud", number(check.powerWatts())));
        }
        if (setup.target().bridged()) {
            cautions.add(messages.text("caution.bridged", number(setup.target().channelLoadOhms())));
        }
        cautions.add(messages.text("caution.always"));
        return List.copyOf(cautions);
    }

    private String number(double value) {
        return QuantityFormat.digits(DIGITS).format(value).replace('.', decimalMark);
    }

    private String db(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(DECIMALS_OF_DB, RoundingMode.HALF_UP);
        return rounded.stripTrailingZeros().toPlainString().replace('.', decimalMark);
    }
}
