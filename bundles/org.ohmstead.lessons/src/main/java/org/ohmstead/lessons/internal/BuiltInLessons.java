// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonProvider;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/** The lessons that Ohmstead brings, in the order in which they build on one another. */
@Component
public final class BuiltInLessons implements LessonProvider {
    private static final List<Function<Messages, Lesson>> MAKERS = List.of(
            LoadAndPower::lesson,
            SupplyVoltage::lesson,
            Bridging::lesson,
            Clipping::lesson,
            OneAndTenPercent::lesson,
            DecibelsAndHearing::lesson,
            HeatAndDuty::lesson,
            FourWires::lesson,
            UncertaintyAndVerdicts::lesson,
            BurstAndSteady::lesson,
            GainOverlap::lesson);

    @Override
    public List<Lesson> lessons(Locale locale) {
        Messages messages = Messages.of(BuiltInLessons.class, locale);
        return MAKERS.stream().map(maker -> maker.apply(messages)).toList();
    }
}
