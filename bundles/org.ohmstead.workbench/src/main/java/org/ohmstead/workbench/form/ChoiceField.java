// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;

/**
 * One of some choices, taken from a list.
 *
 * @param <E> the choices
 */
public final class ChoiceField<E> extends Field<E> {
    private final Combo combo;
    private final Function<E, String> words;
    private List<E> choices = List.of();

    /**
     * Adds the field to a section.
     *
     * @param choices what can be chosen, in this order
     * @param words how a choice reads
     */
    public ChoiceField(FormSection section, String id, String label, List<E> choices, Function<E, String> words) {
        super(section, id, label, "", false, grid -> new Combo(grid, SWT.READ_ONLY | SWT.DROP_DOWN));
        this.words = words;
        combo = (Combo) control();
        setChoices(choices);
        combo.addListener(SWT.Selection, event -> commit());
        // Scrolling a form must not change a choice that the pointer happens to pass.
        combo.addListener(SWT.MouseVerticalWheel, event -> event.doit = false);
    }

    /** Puts other choices in place; the value stays, and is shown even when it is none of them. */
    public void setChoices(List<E> newChoices) {
        choices = List.copyOf(newChoices);
        combo.setItems(choices.stream().map(words).toArray(String[]::new));
        value().ifPresent(this::show);
    }

    @Override
    void show(E shown) {
        int index = choices.indexOf(shown);
        if (index < 0) {
            combo.setItems(choices.stream().map(words).toArray(String[]::new));
            combo.add(words.apply(shown));
            index = choices.size();
        }
        if (combo.getSelectionIndex() != index) {
            combo.select(index);
        }
    }

    @Override
    boolean pending() {
        return false;
    }

    @Override
    public void setReadOnly(boolean readOnly) {
        combo.setEnabled(!readOnly);
    }

    private void commit() {
        int index = combo.getSelectionIndex();
        if (index < 0 || index >= choices.size()) {
            return;
        }
        Optional<E> before = value();
        if (!offer(choices.get(index))) {
            before.ifPresent(this::show);
        }
    }
}
