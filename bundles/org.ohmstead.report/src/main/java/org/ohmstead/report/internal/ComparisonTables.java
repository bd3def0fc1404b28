// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Reading;
import org.ohmstead.report.internal.Evidence.Taken;
import org.ohmstead.units.Decibels;

/** Channels against one another, and bursts against continuous tones. */
final class ComparisonTables {
    private static final double DECIBELS_PER_NEPER_OF_POWER = 10 / Math.log(10);
    private final Evidence evidence;
    private final Speech speech;

    ComparisonTables(Evidence evidence) {
        this.evidence = evidence;
        this.speech = evidence.speech();
    }

    /** Returns the channels' difference in dB for each load and supply voltage; without rows when there are no channels to compare. */
    Table balance() {
        List<Taken> pairs = evidence.standing(PowerKind.CONTINUOUS).stream()
                .filter(taken -> taken.reading().channels().size() > 1)
                .toList();
        List<Double> voltages = Evidence.voltages(pairs);
        Table.Builder table = Table.titled("").brief(speech.text("load"));
        voltages.forEach(volts -> table.number(speech.text("at", speech.volts(volts)), "dB"));
        for (Mode mode : Evidence.modes(pairs)) {
            List<Taken> ofMode = pairs.stream()
                    .filter(taken -> taken.reading().mode() == mode)
                    .toList();
            for (double ohms : Evidence.loads(ofMode)) {
                List<String> cells = new ArrayList<>();
                cells.add(speech.of(mode) + ", " + speech.ohms(ohms));
                voltages.forEach(volts -> cells.add(balanceCell(ofMode, ohms, volts)));
                table.row(cells);
            }
        }
        return table.build();
    }

    private String balanceCell(List<Taken> list, double ohms, double volts) {
        return list.stream()
                .filter(taken -> Double.compare(taken.reading().nominalLoadOhms(), ohms) == 0
                        && Double.compare(taken.aimedVolts(), volts) == 0)
                .map(taken -> difference(taken.reading()))
                .reduce((first, last) -> last)
                .orElse(Figures.NONE);
    }

    private String difference(Reading reading) {
        List<ChannelReading> channels = reading.channels();
        boolean comparable =
                channels.stream().allMatch(channel -> Evidence.reached(channel) && channel.powerWatts() > 0);
        if (!comparable) {
            return Figures.NONE;
        }
        if (channels.size() == 2) {
            double ratio = channels.get(0).powerWatts() / channels.get(1).powerWatts();
            return speech.signed(Decibels.ofPowerRatio(ratio), 2);
        }
        double highest =
                channels.stream().mapToDouble(ChannelReading::powerWatts).max().orElseThrow();
        return speech.fixed(
                Decibels.ofPowerRatio(highest / reading.weakestChannel().powerWatts()), 2);
    }

    /** Returns the tone bursts with their dynamic headroom; without rows when there were none. */
    Table bursts() {
        Table.Builder table = Table.titled("")
                .brief(speech.text("full.bursts.cell"))
                .number(speech.text("supply"), "V")
                .text(speech.text("channel.short"))
                .number(speech.text("full.bursts.power"), "W")
                .number(speech.text("full.bursts.steady"), "W")
                .brief(speech.text("full.bursts.entries"))
                .number(speech.text("full.bursts.headroom"), "dB");
        String before = "";
        for (Taken burst : evidence.standing(PowerKind.BURST)) {
            String stimulus = speech.many(burst.reading().stimulus());
            if (!stimulus.equals(before)) {
                table.part(stimulus);
                before = stimulus;
            }
            ChannelReading channel = burst.reading().weakestChannel();
            Optional<Taken> continuous = counterpart(burst);
            Optional<ChannelReading> steady = continuous.flatMap(taken -> sameChannel(taken, channel));
            table.row(
                    evidence.cell(burst),
                    speech.brief(burst.aimedVolts(), 4),
                    channel.channel(),
                    evidence.power(channel),
                    steady.map(evidence::power).orElse(Figures.NONE),
                    burst.entryId()
                            + continuous.map(taken -> " / " + taken.entryId()).orElse(""),
                    steady.map(other -> headroom(channel, other)).orElse(Figures.NONE));
        }
        return table.build();
    }

    /** The continuous reading that a burst is compared with: same mode, load, supply volts and end point, nearest in frequency. */
    private Optional<Taken> counterpart(Taken burst) {
        double frequency = burst.reading().stimulus().frequencyHz();
        return evidence.standing(PowerKind.CONTINUOUS).stream()
                .filter(burst::sameCell)
                .filter(taken ->
                        taken.reading().endPoint().equals(burst.reading().endPoint()))
                .min(Comparator.comparingDouble((Taken taken) ->
                        Math.abs(Math.log(taken.reading().stimulus().frequencyHz() / frequency))));
    }

    private static Optional<ChannelReading> sameChannel(Taken taken, ChannelReading like) {
        return taken.reading().channels().stream()
                .filter(channel -> channel.channel().equals(like.channel()))
                .filter(channel -> channel.powerWatts() > 0)
                .findFirst();
    }

    private String headroom(ChannelReading burst, ChannelReading steady) {
        if (!Evidence.reached(burst) || !Evidence.reached(steady) || !(burst.powerWatts() > 0)) {
            return Figures.NONE;
        }
        double relative = Math.hypot(
                burst.standardUncertaintyWatts() / burst.powerWatts(),
                steady.standardUncertaintyWatts() / steady.powerWatts());
        double decibels = Decibels.ofPowerRatio(burst.powerWatts() / steady.powerWatts());
        return speech.stated(decibels, evidence.expanded(DECIBELS_PER_NEPER_OF_POWER * relative));
    }
}
