// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.curves.internal.StageFit;
import org.ohmstead.units.text.Messages;

/**
 * Fits all allowed models and chooses: the simplest one that no richer one beats by {@link ModelChoice#CLEAR_FROM} in
 * AICc = chi²/c + 2p + 2p(p+1)/(n-p-1) (C. M. Hurvich, C.-L. Tsai, 1989). The divisor c, at least 1, is the lowest chi²
 * per degree of freedom of all models, so that readings that scatter more than their uncertainties say do not call for
 * ever richer models (K. P. Burnham, D. R. Anderson, 2002, 2.5).
 */
final class ModelSelection {
    private static final Messages TEXTS = Messages.of(ModelSelection.class);

    /** Columns of equal length so nearly dependent that the values mean nothing. */
    private static final double WORST_CONDITION = 2e4;

    private final Terrain terrain;
    private final StudyRequest request;
    private final List<Attempt> attempts = new ArrayList<>();

    private record Attempt(ModelKind kind, Optional<ModelFit> fit, String remark) {}

    ModelSelection(Terrain terrain, StudyRequest request) {
        this.terrain = terrain;
        this.request = request;
    }

    static Optional<ModelFit> fit(ModelKind kind, Terrain terrain, StudyRequest request) {
        return new ModelSelection(terrain, request).attempt(kind).fit();
    }

    /** Returns the choice, or nothing if the readings determine none of the models. */
    Optional<ModelChoice> choose() {
        for (ModelKind kind : ModelKind.values()) {
            if (kind != ModelKind.PROPORTIONAL && request.allowed().contains(kind)) {
                attempts.add(attempt(kind));
            }
        }
        List<ModelFit> fitted =
                attempts.stream().flatMap(attempt -> attempt.fit().stream()).toList();
        boolean follows = fitted.stream().anyMatch(fit -> fit.kind() != ModelKind.REGULATED_THROUGHOUT);
        boolean compares = fitted.stream().anyMatch(fit -> criterion(fit, 1).isPresent());
        if (!follows && !compares && request.allowed().contains(ModelKind.PROPORTIONAL)) {
            return attempt(ModelKind.PROPORTIONAL).fit().map(fit -> choice(fit, 1));
        }
        if (fitted.isEmpty()) {
            return Optional.empty();
        }
        double divisor = Math.max(
                1,
                fitted.stream()
                        .filter(fit -> fit.freedom() > 0)
                        .mapToDouble(fit -> fit.chiSquared() / fit.freedom())
                        .min()
                        .orElse(1));
        return Optional.of(choice(choose(fitted, divisor), divisor));
    }

    private Attempt attempt(ModelKind kind) {
        ModelForm form = new ModelForm(kind, terrain);
        Optional<String> obstacle = form.obstacle();
        if (obstacle.isPresent()) {
            return new Attempt(kind, Optional.empty(), obstacle.get());
        }
        double[] lower = form.lower(request.bounds());
        double[] upper = form.upper(request.bounds());
        for (int slot : form.free()) {
            if (!(lower[slot] < upper[slot])) {
                return new Attempt(kind, Optional.empty(), TEXTS.text("select.noRoom"));
            }
        }
        List<double[]> starts = new ArrayList<>(form.starts());
        Optional<StageFit> fit = StageFit.best(terrain.data(), form.free(), lower, upper, starts, request.robust());
        if (fit.isEmpty()) {
            return new Attempt(kind, Optional.empty(), TEXTS.text("select.undetermined"));
        }
        Optional<String> unfit = form.unfit(fit.get().solution().slots());
        if (unfit.isPresent()) {
            return new Attempt(kind, Optional.empty(), unfit.get());
        }
        ModelFit found = new ModelFit(terrain, form, fit.get(), request);
        boolean bounded = found.onBound();
        if (!bounded && !(found.conditionNumber() < WORST_CONDITION)) {
            return new Attempt(kind, Optional.empty(), TEXTS.text("select.hardly"));
        }
        return new Attempt(kind, Optional.of(found), "");
    }

    private OptionalDouble criterion(ModelFit fit, double divisor) {
        int count = terrain.points().size();
        int values = fit.parameterCount();
        if (count - values - 1 < 1) {
            return OptionalDouble.empty();
        }
        double correction = 2.0 * values * (values + 1) / (count - values - 1);
        return OptionalDouble.of(fit.chiSquared() / divisor + 2 * values + correction);
    }

    private ModelFit choose(List<ModelFit> fitted, double divisor) {
        List<ModelFit> comparable = fitted.stream()
                .filter(fit -> criterion(fit, divisor).isPresent())
                .toList();
        Optional<ModelFit> general = fitted.stream()
                .filter(fit -> fit.kind() == ModelKind.UNREGULATED)
                .findFirst();
        if (general.isPresent() && !comparable.contains(general.get())) {
            return general.get();
        }
        if (comparable.isEmpty()) {
            return fitted.stream()
                    .min(Comparator.comparingInt(ModelFit::parameterCount))
                    .orElseThrow();
        }
        Comparator<ModelFit> byCriterion =
                Comparator.comparingDouble(fit -> criterion(fit, divisor).orElseThrow());
        ModelFit best = comparable.stream().min(byCriterion).orElseThrow();
        double lowest = criterion(best, divisor).orElseThrow();
        ModelFit found = best;
        for (ModelFit simpler : comparable) {
            boolean close = criterion(simpler, divisor).orElseThrow() < lowest + ModelChoice.CLEAR_FROM;
            if (close && simpler.kind().isSpecialCaseOf(found.kind())) {
                found = simpler;
            }
        }
        return found;
    }

    private ModelChoice choice(ModelFit chosen, double divisor) {
        OptionalDouble own = criterion(chosen, divisor);
        List<ModelChoice.Compared> compared = new ArrayList<>();
        for (Attempt attempt : attempts) {
            OptionalDouble criterion =
                    attempt.fit().map(fit -> criterion(fit, divisor)).orElse(OptionalDouble.empty());
            OptionalDouble above = own.isPresent() && criterion.isPresent()
                    ? OptionalDouble.of(criterion.getAsDouble() - own.getAsDouble())
                    : OptionalDouble.empty();
            compared.add(new ModelChoice.Compared(attempt.kind(), attempt.fit(), above, attempt.remark()));
        }
        ModelChoice draft = new ModelChoice(chosen, compared, true, List.of());
        List<String> doubts = doubts(draft, own.isPresent());
        List<String> sentences = new ArrayList<>(doubts);
        if (doubts.isEmpty()) {
            sentences.add(
                    request.allowed().size() == 1
                            ? TEXTS.text("select.onlyAllowed", chosen.kind().words())
                            : TEXTS.text("select.oneModel", chosen.kind().words()));
        }
        return new ModelChoice(chosen, compared, doubts.isEmpty(), sentences);
    }

    private List<String> doubts(ModelChoice draft, boolean comparable) {
        List<String> doubts = new ArrayList<>();
        ModelKind kind = draft.chosen().kind();
        if (kind == ModelKind.PROPORTIONAL) {
            doubts.add(TEXTS.text("select.proportional"));
            return doubts;
        }
        if (request.allowed().size() == 1) {
            return doubts;
        }
        List<ModelFit> rivals = draft.rivals();
        if (!rivals.isEmpty()) {
            List<String> words = new ArrayList<>();
            words.add(kind.words());
            rivals.forEach(rival -> words.add(rival.kind().words()));
            doubts.add(TEXTS.text("select.apart", StudyWords.list(words), StudyAdvice.between(kind, rivals, terrain)));
        }
        if (!comparable) {
            doubts.add(TEXTS.text("select.tooFew", kind.words()));
        }
        if (kind == ModelKind.UNREGULATED) {
            for (ModelChoice.Compared other : draft.compared()) {
                boolean hidden = other.fit().isEmpty() && other.kind() == ModelKind.REGULATED;
                if (hidden) {
                    doubts.add(TEXTS.text("select.hidden", other.kind().words(), other.remark()));
                }
            }
        }
        if (kind == ModelKind.REGULATED_THROUGHOUT && !terrain.severalLoads()) {
            doubts.add(TEXTS.text("select.steady"));
        }
        return doubts;
    }

    /** Returns the powers of all readings on a fit, for refits. */
    static double[] fittedWatts(ModelFit fit) {
        double[] fitted = new double[fit.terrain().points().size()];
        Arrays.setAll(fitted, i -> fit.diagnostics().residuals().get(i).fittedWatts());
        return fitted;
    }
}
