/** Questions to a person as values: what is asked, why, what may be answered, and how typed text becomes an answer. */
package understudy.question;
