// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.time.LocalDate;
import java.util.Currency;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.ohmstead.model.Price;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;

/** The fields for what the amplifier cost; with the first one empty that is not known. */
final class PriceFields {
    private static final String CURRENCY = "[A-Z]{3}";
    private static final String USUAL = "EUR";

    private PriceFields() {}

    static void add(FormPage page, FormSection form) {
        Field<OptionalDouble> amount = form.optionalQuantity("price", Texts.text("price.amount"), Measure.named(""));
        amount.setHint(Texts.text("price.amount.hint"));
        page.bind(
                amount,
                "$.amplifier.price.amount",
                Texts.edit("amplifier.price.amount"),
                project -> known(project).stream().mapToDouble(Price::amount).findFirst(),
                (project, value) -> withAmount(project, value, page.today()));
        Field<String> currency = form.word("currency", Texts.text("price.currency"));
        currency.setHint(Texts.text("price.currency.hint"));
        currency.check(text -> {
            if (!text.matches(CURRENCY)) {
                throw new IllegalArgumentException(Texts.text("price.currency.refused"));
            }
        });
        bind(page, currency, "currency", USUAL, Price::currency, Price::withCurrency);
        Field<Optional<LocalDate>> day = form.date("priceon", Texts.text("price.on"));
        day.check(value -> {
            if (value.isEmpty()) {
                throw new IllegalArgumentException(Texts.text("price.on.refused"));
            }
        });
        bind(
                page,
                day,
                "on",
                Optional.empty(),
                price -> Optional.of(price.on()),
                (price, value) -> price.withOn(value.orElseThrow()));
        page.add(project -> {
            currency.setVisible(known(project).isPresent());
            day.setVisible(known(project).isPresent());
        });
    }

    private static Optional<Price> known(Project project) {
        return project.amplifier().price();
    }

    private static Project withAmount(Project project, OptionalDouble amount, LocalDate today) {
        Optional<Price> changed = amount.isEmpty()
                ? Optional.empty()
                : Optional.of(known(project)
                        .orElseGet(() -> new Price(0, currencyOf(Locale.getDefault()), today))
                        .withAmount(amount.getAsDouble()));
        return project.withAmplifier(project.amplifier().withPrice(changed));
    }

    /** Returns the currency of a country; a locale without one gives the euro. */
    static String currencyOf(Locale locale) {
        boolean country = locale.getCountry().matches("[A-Z]{2}");
        Currency currency = country ? Currency.getInstance(locale) : null;
        return currency == null ? USUAL : currency.getCurrencyCode();
    }

    private static <T> void bind(
            FormPage page,
            Field<T> field,
            String name,
            T otherwise,
            Function<Price, T> get,
            BiFunction<Price, T, Price> with) {
        page.bind(
                field,
                "$.amplifier.price." + name,
                Texts.edit("amplifier.price." + name),
                project -> known(project).map(get).orElse(otherwise),
                (project, value) -> project.withAmplifier(
                        project.amplifier().withPrice(known(project).map(present -> with.apply(present, value)))));
    }
}
