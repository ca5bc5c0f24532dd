/** A hunt as a state: what is asked now, what follows from an answer, what is to be shown; whoever leads it only shows and reads. */
package understudy.hunt;
