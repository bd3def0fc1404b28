// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Step;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.ScheduledJob;
import org.ohmstead.thermal.plan.StepForecast;
import org.ohmstead.units.text.Messages;

/**
 * A step in its place on the time axis, with the handling and the rest before it.
 *
 * @param id the step's
 * @param changeSeconds handling before it
 * @param restSeconds rest after that
 * @param startSeconds when it begins
 * @param endSeconds when it ends
 * @param cause why there is a rest
 * @param causeName what would get too warm without the rest; empty text when nothing would
 * @param group what neighbours have in common, such as "stereo 4ohm"
 * @param what the same with the kind of signal
 * @param fill how its bar is filled
 * @param heatRatio its heat in the amplifier over that of the step with the most, 0 to 1
 */
record ScheduleSlot(
        String id,
        double changeSeconds,
        double restSeconds,
        double startSeconds,
        double endSeconds,
        ScheduledJob.Cause cause,
        String causeName,
        String group,
        String what,
        Fill fill,
        double heatRatio) {
    private static final Messages TEXTS = Messages.of(ScheduleSlot.class);

    /** What tells modes apart without colours. */
    enum Fill {
        /** Each channel has its load. */
        PLAIN,
        /** Bridged. */
        HATCHED,
        /** Each channel has its load, in bursts. */
        STRIPED,
        /** One channel alone. */
        BARRED,
        /** The warm-up. */
        HOLLOW
    }

    /** Returns the steps of a forecast in their order. */
    static List<ScheduleSlot> of(Forecast forecast) {
        double most = forecast.plan().steps().stream()
                .mapToDouble(step -> step.heatWatts().high())
                .max()
                .orElse(0);
        List<ScheduleSlot> slots = new ArrayList<>();
        forecast.course().ifPresent(course -> course.jobs().forEach(job -> slots.add(of(forecast, job, most))));
        return List.copyOf(slots);
    }

    private static ScheduleSlot of(Forecast forecast, ScheduledJob job, double mostWatts) {
        Optional<Step> step = forecast.project().step(job.id());
        double heat = forecast.plan()
                .step(job.id())
                .map(StepForecast::heatWatts)
                .map(watts -> mostWatts > 0 ? watts.high() / mostWatts : 0)
                .orElse(0.0);
        return new ScheduleSlot(
                job.id(),
                job.changeSeconds(),
                job.restSeconds(),
                job.startSeconds(),
                job.endSeconds(),
                job.cause(),
                job.cause() == ScheduledJob.Cause.LIMIT ? forecast.restCause(job) : "",
                step.map(ScheduleSlot::group).orElse(TEXTS.text("slot.warmUp")),
                step.map(ScheduleSlot::what).orElse(TEXTS.text("slot.eighth")),
                step.map(ScheduleSlot::fill).orElse(Fill.HOLLOW),
                heat);
    }

    private static String group(Step step) {
        return TEXTS.text("slot.group", StepStart.words(step.mode()), step.loadId());
    }

    private static String what(Step step) {
        return bursts(step) ? TEXTS.text("slot.bursts", group(step)) : group(step);
    }

    private static boolean bursts(Step step) {
        return step.stimulus().powerKind() == PowerKind.BURST;
    }

    private static Fill fill(Step step) {
        return switch (step.mode()) {
            case STEREO -> bursts(step) ? Fill.STRIPED : Fill.PLAIN;
            case BRIDGED -> Fill.HATCHED;
            case SINGLE -> Fill.BARRED;
        };
    }

    double changeStartSeconds() {
        return startSeconds - restSeconds - changeSeconds;
    }

    double restStartSeconds() {
        return startSeconds - restSeconds;
    }

    double middleSeconds() {
        return (startSeconds + endSeconds) / 2;
    }

    /** Returns whether the user may move it and put a rest before it. */
    boolean movable() {
        return !id.equals(PlanForecast.WARM_UP);
    }

    /** Returns all about it as one sentence. */
    String sentence() {
        String why =
                cause == ScheduledJob.Cause.LIMIT ? TEXTS.text("slot.needed", causeName) : TEXTS.text("slot.asked");
        String key = "slot.on" + (changeSeconds > 0 ? ".change" : "") + (restSeconds > 0 ? ".rest" : "");
        return TEXTS.text(
                key,
                id,
                what,
                HeatWords.time(startSeconds),
                HeatWords.time(endSeconds - startSeconds),
                HeatWords.time(changeSeconds),
                HeatWords.time(restSeconds),
                why);
    }
}
