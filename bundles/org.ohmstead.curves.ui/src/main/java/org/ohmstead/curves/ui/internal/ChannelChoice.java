// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.units.text.Messages;

/** Which channels' curves are shown. */
sealed interface ChannelChoice {
    Messages TEXTS = Messages.of(ChannelChoice.class);

    /** Returns the curves of a group that are shown. */
    List<LoadCurve> of(CurveGroup group);

    /** Returns what the choice is called. */
    String text();

    /** For each load the channel with the least power. */
    record Lowest() implements ChannelChoice {
        @Override
        public List<LoadCurve> of(CurveGroup group) {
            return group.weakest();
        }

        @Override
        public String text() {
            return TEXTS.text("channel.lowest");
        }
    }

    /** All of them. */
    record Every() implements ChannelChoice {
        @Override
        public List<LoadCurve> of(CurveGroup group) {
            return group.curves();
        }

        @Override
        public String text() {
            return TEXTS.text("channel.every");
        }
    }

    /** One of them. */
    record Single(String channel) implements ChannelChoice {
        @Override
        public List<LoadCurve> of(CurveGroup group) {
            return group.curves().stream()
                    .filter(curve -> curve.channel().equals(channel))
                    .toList();
        }

        @Override
        public String text() {
            return TEXTS.text("channel.single", channel);
        }
    }

    /** Returns the choices that a group offers. */
    static List<ChannelChoice> offeredBy(Optional<CurveGroup> group) {
        List<ChannelChoice> choices = new ArrayList<>();
        choices.add(new Lowest());
        List<String> channels = group.map(CurveGroup::channels).orElse(List.of());
        if (channels.size() > 1) {
            choices.add(new Every());
            channels.forEach(channel -> choices.add(new Single(channel)));
        }
        return choices;
    }
}
