// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.history.SharedPart;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.UncertaintyPart;

/** Which parts of the uncertainty of readings have which cause in common. */
public final class Causes {
    private static final String CORRECTION = "correction to the nominal load";

    private final String source;

    private record Key(String part, String cause) {}

    /**
     * Makes it.
     *
     * @param source where the readings come from; instruments and loads of readings that do not name their bench are known by it
     */
    public Causes(String source) {
        this.source = source;
    }

    /**
     * Returns the shared parts of a channel over several readings. A part that only some of them have, because the meter was another then
     * or had been calibrated anew, is as large as the mean of all.
     */
    public List<SharedPart> of(List<Reading> readings, String channelName) {
        Map<Key, Double> sums = new LinkedHashMap<>();
        int count = 0;
        for (Reading reading : readings) {
            Optional<ChannelReading> found = reading.channels().stream()
                    .filter(channel -> channel.channel().equals(channelName) && channel.powerWatts() > 0)
                    .findFirst();
            if (found.isPresent()) {
                count++;
                add(sums, reading, found.get());
            }
        }
        List<SharedPart> parts = new ArrayList<>();
        for (Map.Entry<Key, Double> each : sums.entrySet()) {
            parts.add(new SharedPart(each.getKey().part(), each.getKey().cause(), each.getValue() / count));
        }
        return List.copyOf(parts);
    }

    private void add(Map<Key, Double> sums, Reading reading, ChannelReading channel) {
        for (UncertaintyPart part : channel.uncertaintyParts()) {
            if (part.shared() && part.standardUncertaintyWatts() > 0) {
                sums.merge(
                        new Key(part.source(), cause(part, reading)),
                        part.standardUncertaintyWatts() / channel.powerWatts(),
                        Double::sum);
            }
        }
        // The same allowance for sag as the curves make: half of the correction, rectangular.
        double correction = 0.5 * Math.abs(channel.loadOhms() / reading.nominalLoadOhms() - 1) / Math.sqrt(3);
        if (correction > 0) {
            sums.merge(new Key(CORRECTION, ""), correction, Double::sum);
        }
    }

    private String cause(UncertaintyPart part, Reading reading) {
        String bench = bench(reading);
        Optional<BudgetInput> input = part.input();
        if (input.isPresent() && input.get() == BudgetInput.OUTPUT_VOLTS) {
            return bench + instruments(reading, Optional.of(MeterQuantity.OUTPUT_VOLTS));
        }
        if (input.isPresent() && input.get() == BudgetInput.SUPPLY_VOLTS) {
            return bench + instruments(reading, Optional.of(MeterQuantity.SUPPLY_VOLTS));
        }
        String load = "; load " + reading.loadId();
        return input.isPresent() && input.get() == BudgetInput.LOAD_OHMS
                ? bench + load
                : bench + load + instruments(reading, Optional.empty());
    }

    /** A meter that was calibrated since counts as another: its error is. */
    private static String instruments(Reading reading, Optional<MeterQuantity> quantity) {
        StringBuilder words = new StringBuilder();
        for (InstrumentUsed each : reading.provenance().instruments()) {
            if (quantity.map(wanted -> each.quantity() == wanted).orElse(true)) {
                words.append("; ")
                        .append(each.meterId())
                        .append(", ")
                        .append(each.name())
                        .append(each.calibratedOn()
                                .map(day -> ", calibrated " + day)
                                .orElse(""));
            }
        }
        return words.toString();
    }

    private String bench(Reading reading) {
        String place = reading.provenance().specimen().map(Specimen::bench).orElse("");
        return place.isEmpty() ? "project " + source : "bench " + place;
    }
}
