// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

/** Which channels of the amplifier a study looks at. */
public sealed interface ChannelChoice {

    /** All channels, taken as alike. */
    record Joint() implements ChannelChoice {}

    /**
     * The readings of one channel only; bridged ones are of two channels and are left out.
     *
     * @param channel its name
     */
    record One(String channel) implements ChannelChoice {}

    /** Returns whether a point belongs to the choice. */
    default boolean includes(StudyPoint point) {
        return this instanceof One one ? point.channel().equals(one.channel()) : true;
    }
}
